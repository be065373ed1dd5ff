// @vitest-environment node

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { NewerScreens } from '#ui/offline/newer-screens.ts';

beforeEach(() => {
  vi.useFakeTimers({ now: 0 });
  vi.spyOn(Math, 'random').mockReturnValue(0.5);
});
afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

const pageOf = (build: string) => `<html><head><meta name="screens" content="${build}"></head></html>`;

/** A page of the build `old`, untouched for an hour, whose hub has another. */
function page(memory = new Map<string, string>()) {
  const hand = { quiet: 3_600_000, written: false, open: false };
  const loads: number[] = [];
  const screens = new NewerScreens();
  const around = { there: pageOf('new') as string | null, asked: 0 };
  screens.start({
    own: 'old',
    hand,
    memory: {
      getItem: (name) => memory.get(name) ?? null,
      setItem: (name, value) => void memory.set(name, value),
    },
    page() {
      around.asked += 1;
      return Promise.resolve(around.there);
    },
    reload: () => loads.push(Date.now()),
  });
  return { screens, hand, loads, around, memory };
}
const later = (ms: number) => vi.advanceTimersByTimeAsync(ms);

test('a page that nobody touches is loaded anew soon after its hub says that it has other screens, and only then', async () => {
  const { screens, loads, around } = page();
  screens.hear('old');
  screens.hear(undefined);
  await later(60_000);
  expect([loads, around.asked]).toEqual([[], 0]);
  screens.hear('new');
  expect(screens.older).toBe(true);
  await later(3000);
  expect(loads).toEqual([]);
  await later(3000);
  expect(loads).toHaveLength(1);
});

test('what somebody has written is never taken away; a setup is left alone until whoever works by it has gone, or until nothing works any more', async () => {
  const { screens, hand, loads } = page();
  hand.written = true;
  screens.hear('new');
  await later(3_600_000);
  hand.written = false;
  hand.open = true;
  hand.quiet = 5 * 60_000;
  await later(60_000);
  expect(loads).toEqual([]);
  hand.quiet = 11 * 60_000;
  await later(1000);
  expect(loads).toHaveLength(1);

  const other = page();
  other.hand.open = true;
  other.hand.quiet = 1000;
  other.screens.hear('new');
  other.screens.strange();
  await later(60_000);
  expect(other.loads).toEqual([]);
  other.hand.quiet = 4000;
  await later(1000);
  expect(other.loads).toHaveLength(1);
});

test('a page that stays the older one tries three times for one build, a minute apart, and again for the next build', async () => {
  const memory = new Map<string, string>();
  const counts: number[] = [];
  for (let k = 0; k < 6; k += 1) {
    const { screens, loads } = page(memory);
    screens.hear('new');
    await later(30_000);
    counts.push(loads.length);
    await later(60_000);
  }
  expect(counts).toEqual([1, 1, 1, 0, 0, 0]);
  const { screens, loads, around } = page(memory);
  screens.hear('newer');
  around.there = pageOf('newer');
  await later(30_000);
  expect(loads).toHaveLength(1);
});

test('where a reload would give the same page, or none, there is none', async () => {
  const { screens, loads, around } = page();
  around.there = pageOf('old');
  screens.hear('new');
  await later(60_000);
  around.there = null;
  await later(60_000);
  expect(loads).toEqual([]);
  around.there = pageOf('new');
  await later(2000);
  expect(loads).toHaveLength(1);
});

test('an answer of an unknown form is looked into though no beat says that there are other screens', async () => {
  const { screens, loads, around } = page();
  around.there = pageOf('old');
  screens.strange();
  await later(150_000);
  expect([loads.length, around.asked]).toEqual([0, 3]);
  around.there = pageOf('new');
  await later(60_000);
  expect(loads).toHaveLength(1);
});

test('a browser that lets nothing be remembered is not loaded anew, as that would never end', async () => {
  const { screens, loads } = page({
    get: () => undefined,
    set() {
      throw new Error('denied');
    },
  } as unknown as Map<string, string>);
  screens.hear('new');
  await later(60_000);
  expect(loads).toEqual([]);
});
