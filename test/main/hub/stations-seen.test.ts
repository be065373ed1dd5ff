import { randomUUID } from 'node:crypto';
import { beforeEach, expect, onTestFinished, test, vi } from 'vitest';
import type { ScreenShows } from '#core/api/stations-api.ts';
import { STATIONS } from '#core/stages/stations.ts';
import { StationsSeen } from '#main/hub/stations-seen.ts';

let now = 0;
let told = 0;
let seen: StationsSeen;

beforeEach(() => {
  now = 1_000_000;
  told = 0;
  seen = new StationsSeen(
    () => (told += 1),
    () => now,
  );
  onTestFinished(() => seen.close());
});

const page = (more: Partial<ScreenShows> = {}): ScreenShows => ({
  screen: randomUUID(),
  station: 'mortiser',
  ...more,
});
const stands = () => seen.pages.map(({ owner, station, here, since }) => [owner, station, here, since]);

test('a page is here since it came, and away since its last stream ended', () => {
  const shows = page();
  const first = seen.opened('tablet', shows.screen);
  const second = seen.opened('tablet', shows.screen);
  seen.hear('tablet', shows);
  now += 5000;
  seen.hear('tablet', { ...shows, by: 'P-ANNA' });
  expect(stands()).toEqual([['tablet', 'mortiser', true, 1_000_000]]);
  first();
  first();
  expect(stands()).toEqual([['tablet', 'mortiser', true, 1_000_000]]);
  second();
  expect(stands()).toEqual([['tablet', 'mortiser', false, 1_005_000]]);
  now += 1000;
  seen.hear('tablet', shows);
  expect(stands()).toEqual([['tablet', 'mortiser', true, 1_006_000]]);
});

test('a page of which nothing is heard for forty seconds is away since it was heard last', () => {
  seen.hear('tablet', page());
  now += 40_000;
  seen.look();
  expect(stands()).toEqual([['tablet', 'mortiser', true, 1_000_000]]);
  now += 1;
  seen.look();
  expect(stands()).toEqual([['tablet', 'mortiser', false, 1_000_000]]);
});

test('a device that shows another screen is away where it was; at the hub’s own machine somebody only looked', () => {
  const [device, own] = [page(), page()];
  seen.hear('tablet', device);
  seen.hear(null, own);
  now += 1000;
  seen.hear('tablet', { ...device, station: null });
  seen.hear(null, { ...own, station: null });
  expect(stands()).toEqual([['tablet', 'mortiser', false, 1_001_000]]);
  seen.hear('tablet', { ...device, station: 'bench' });
  expect(stands()).toEqual([['tablet', 'bench', true, 1_001_000]]);
});

test('a page loaded anew takes the place of the one before it, in whichever order the hub hears of it', () => {
  for (const owner of ['tablet', null]) {
    const [before, after] = [page(), page()];
    const ended = seen.opened(owner, before.screen);
    seen.hear(owner, before);
    seen.hear(owner, after);
    ended();
    expect(stands().filter(([who]) => who === owner)).toEqual([[owner, 'mortiser', true, now]]);
  }
  seen.hear('tablet', page());
  expect(stands()).toHaveLength(2);
});

test('at the hub’s own machine each station is away by itself, for a day', () => {
  for (const station of ['bench', 'milling'] as const) {
    const shows = page({ station });
    const ended = seen.opened(null, shows.screen);
    seen.hear(null, shows);
    ended();
  }
  now += 86_400_000;
  seen.look();
  expect(stands()).toHaveLength(2);
  now += 1;
  seen.look();
  expect(stands()).toEqual([]);
});

test('no device crowds out the others, and all together keep to a limit', () => {
  seen.hear('bench tablet', page({ station: 'bench' }));
  for (let k = 0; k < 500; k += 1) seen.hear('flood', page({ station: STATIONS[k % 9] ?? 'bench' }));
  expect(seen.held).toBe(13);
  for (let k = 0; k < 300; k += 1) seen.hear(`device ${k}`, page());
  expect(seen.held).toBe(200);
  expect(stands().at(-1)?.[0]).toBe('device 299');
});

test('a device tells by how much its clock is off, on whatever screen, and nothing of it is held once it is revoked', () => {
  const shows = page({ clock: 300_000 });
  seen.hear('tablet', shows);
  seen.hear('phone', page({ station: null, clock: -4000 }));
  expect([seen.clockOf('tablet'), seen.clockOf('phone'), seen.clockOf('other')]).toEqual([
    300_000,
    -4000,
    undefined,
  ]);
  seen.forget('tablet');
  expect([seen.clockOf('tablet'), stands()]).toEqual([undefined, []]);
});

test('a device is online while a stream of it is open and it was heard of a moment ago', () => {
  expect(seen.isOnline('tablet', now)).toBe(false);
  const ended = seen.opened('tablet', null);
  expect(seen.isOnline('tablet', now - 40_000)).toBe(true);
  expect(seen.isOnline('tablet', now - 40_001)).toBe(false);
  ended();
  expect(seen.isOnline('tablet', now)).toBe(false);
});

test('news are told once a second at most, and not where nothing has changed', () => {
  vi.useFakeTimers();
  onTestFinished(() => void vi.useRealTimers());
  const shows = page();
  seen.hear('tablet', shows);
  vi.advanceTimersByTime(0);
  expect(told).toBe(1);
  for (const by of ['P-1', 'P-2', 'P-3']) seen.hear('tablet', { ...shows, by });
  vi.advanceTimersByTime(999);
  expect(told).toBe(1);
  vi.advanceTimersByTime(1);
  expect(told).toBe(2);
  seen.hear('tablet', { ...shows, by: 'P-3' });
  vi.advanceTimersByTime(5000);
  expect(told).toBe(2);
});
