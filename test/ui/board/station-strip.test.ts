import 'fake-indexeddb/auto';
import { fireEvent, render, screen, waitFor } from '@testing-library/svelte';
import { afterEach, expect, test, vi } from 'vitest';
import type { StationSeen } from '#core/api/stations-api.ts';
import StationStrip from '#ui/board/StationStrip.svelte';
import { live } from '#ui/hub/live.svelte.ts';
import { shop } from '#ui/hub/shop.svelte.ts';

let stations: StationSeen[] = [];
let asked = 0;
function hub(): void {
  asked = 0;
  vi.stubGlobal('fetch', () => {
    asked += 1;
    return Promise.resolve(Response.json({ stations }));
  });
}
afterEach(() => {
  vi.unstubAllGlobals();
  live.stationNews = 0;
});

const now = new Date();
const at = (hour: number, minute: number) =>
  new Date(now.getFullYear(), now.getMonth(), now.getDate(), hour, minute).toISOString();
const MORTISER: StationSeen = {
  station: 'mortiser',
  device: 'Tablet',
  here: true,
  since: at(8, 0),
  by: 'P-17',
  job: 'Boot room',
  door: 'BENCH-1',
  part: 'stile-left',
  stage: 'mortise',
  code: '7K2Q4MX8BD',
};

test('without a screen at any station there is no strip', async () => {
  stations = [];
  hub();
  render(StationStrip);
  await waitFor(() => expect(asked).toBe(1));
  expect(document.querySelector('button')).toBeNull();
});

test('the strip tells who is where with what, since when one is away, and follows the hub’s news', async () => {
  stations = [MORTISER, { station: 'bench', device: null, here: false, since: at(14, 5), clock: 300_000 }];
  hub();
  vi.spyOn(shop, 'people', 'get').mockReturnValue([{ id: 'a', name: 'Anna', badge: 'P-17' }]);
  render(StationStrip);
  const told = (station: string) =>
    document.querySelector(`[data-seen="${station}"]`)?.textContent.replace(/\s+/g, ' ').trim();
  await waitFor(() => expect(told('mortiser')).toBe('Mortiser Anna, Left stile of BENCH-1'));
  expect(told('bench')).toBe('Bench away since 2:05 PM clock 5 min ahead');
  expect(document.querySelector('[data-seen="mortiser"]')?.getAttribute('data-here')).toBe('true');

  stations = [{ ...MORTISER, stage: 'glue', unsent: 2 }];
  live.stationNews += 1;
  await waitFor(() => expect(told('mortiser')).toBe('Mortiser Anna, the whole door BENCH-1'));
  await fireEvent.click(screen.getByRole('button'));
  const sheet = screen.getByRole('dialog').textContent.replace(/\s+/g, ' ');
  for (const line of [
    'Mortiser',
    'Tablet',
    'here',
    'Anna',
    'the whole door BENCH-1: ',
    'Boot room',
    '2 records not',
  ])
    expect(sheet).toContain(line);
});

test('two screens at one station are told apart by their devices, be they called alike or not', async () => {
  const away = { station: 'mortiser', device: 'Tablet', here: false, since: at(7, 0) } as const;
  stations = [{ ...MORTISER, device: null }, away, { ...MORTISER, station: 'fitting' }, { ...away }];
  hub();
  render(StationStrip);
  await waitFor(() => expect(document.querySelectorAll('[data-seen]')).toHaveLength(4));
  const told = [...document.querySelectorAll('[data-seen]')].map(({ textContent }) =>
    textContent.replace(/\s+/g, ' ').trim(),
  );
  expect(told[0]).toContain('Mortiser (at the shop computer) ');
  expect(told[1]).toBe('Mortiser (Tablet) away since 7:00 AM');
  expect(told[2]).not.toContain('Tablet');
});

test('more than twelve screens are counted in the strip and told one by one on the sheet', async () => {
  stations = Array.from({ length: 13 }, (_, k) => ({
    ...MORTISER,
    device: `Tablet ${k}`,
    here: k > 2,
    ...(k === 0 ? { clock: -40_000 } : {}),
  }));
  hub();
  render(StationStrip);
  await waitFor(() =>
    expect(screen.getByRole('button').textContent.replace(/\s+/g, ' ').trim()).toBe(
      'Stations 10 here 3 away 1 with a wrong clock',
    ),
  );
  await fireEvent.click(screen.getByRole('button'));
  expect(document.querySelectorAll('[data-station-seen]')).toHaveLength(13);
  expect(document.querySelectorAll('[data-clock]')).toHaveLength(1);
});
