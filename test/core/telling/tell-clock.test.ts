import { expect, test } from 'vitest';
import { isOff } from '#core/api/stations-api.ts';
import { tellClock } from '#core/telling/tell-clock.ts';

test.each([
  [300_000, '5\u00a0min ahead'],
  [-300_000, '5\u00a0min behind'],
  [30_000, '30\u00a0s ahead'],
  [119_499, '119\u00a0s ahead'],
  [119_500, '2\u00a0min ahead'],
  [-3_600_000, '60\u00a0min behind'],
  [7_200_000, '2\u00a0h ahead'],
  [2 * 86_400_000, '2\u00a0days ahead'],
])('a clock that is off by %d ms is told as %s', (off, told) => {
  expect(tellClock(off)).toBe(told);
});

test('a clock is told to be wrong from half a minute on, to either side', () => {
  expect([undefined, 0, 29_999, -29_999].map(isOff)).toEqual([false, false, false, false]);
  expect([30_000, -30_000].map(isOff)).toEqual([true, true]);
});
