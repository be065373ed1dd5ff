import 'fake-indexeddb/auto';
import { fireEvent, render, screen } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import MessageSheet from '#ui/station/MessageSheet.svelte';
import { Station } from '#ui/station/station.svelte.ts';
import { openShop } from './shop-for-stations.ts';

let asked: { method: string; path: string; body: unknown }[];
let stickers: object | undefined;
let states: object[];

beforeEach(() => {
  asked = [];
  stickers = { printer: 'Labels', stock: 'roll-2x1', positions: 1 };
  states = [{ state: 'printed', made: 1, of: 1 }];
  vi.stubGlobal('fetch', (path: string, init: { method: string; body?: string }) => {
    asked.push({
      method: init.method,
      path,
      body: init.body === undefined ? undefined : JSON.parse(init.body),
    });
    const answer =
      path === '/api/printers'
        ? { printers: [{ name: 'Labels', accepting: true, state: 'idle' }], ...(stickers && { stickers }) }
        : path === '/api/prints'
          ? { id: 'p1' }
          : (states.shift() ?? {});
    return Promise.resolve(new Response(JSON.stringify(answer), { status: 200 }));
  });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  localStorage.clear();
});

/** A blank is given up at milling; what is said of it then stands on the screen. */
async function giveUp(): Promise<string> {
  const { plan } = openShop();
  const station = new Station('milling');
  const code = plan.doors[0]?.parts[0]?.code ?? '';
  station.scan(code);
  await station.spoil('Split or torn out');
  if (station.message === null) throw new Error('nothing is said');
  render(MessageSheet, { message: station.message, dismissed: () => station.dismiss() });
  return plan.id;
}
const posts = () => asked.filter(({ method }) => method === 'POST').map(({ body }) => body);

test('where a blank is given up its replacement’s sticker is printed with one tap', async () => {
  const job = await giveUp();
  const offer = await screen.findByRole('button', { name: 'Print its sticker Labels, roll-2x1' });
  await fireEvent.click(offer);
  await screen.findByText('Printed.');
  expect(posts()).toEqual([
    { job, kind: 'stickers', codes: ['7K2Q4MX8BD'], stock: 'roll-2x1', printer: 'Labels', from: 1 },
  ]);
  expect(screen.queryByRole('button', { name: /Print its sticker/ })).toBe(null);
});

test('on a sheet it goes on where the sheet was left, and a print that fails can be tried again', async () => {
  stickers = { printer: 'Labels', stock: 'letter-3x10', positions: 30 };
  localStorage.setItem('shoulderline.first-label.letter-3x10', '7');
  states = [{ state: 'failed', made: 1, of: 1, message: 'Labels is stopped: no paper.' }];
  await giveUp();
  const name = 'Print its sticker Labels, letter-3x10, sticker 7 of the sheet';
  await fireEvent.click(await screen.findByRole('button', { name }));
  await screen.findByText('Labels is stopped: no paper.');
  states = [{ state: 'printed', made: 1, of: 1 }];
  await fireEvent.click(await screen.findByRole('button', { name }));
  await screen.findByText('Printed.');
  expect(posts()).toMatchObject([{ from: 7 }, { from: 7 }]);
  expect(localStorage.getItem('shoulderline.first-label.letter-3x10')).toBe('8');
});

test('without a printer that stickers were printed on the office is named, and nothing is offered', async () => {
  stickers = undefined;
  await giveUp();
  await screen.findByText('Print its sticker in the office.');
  expect(screen.getAllByRole('button')).toHaveLength(1);
});
