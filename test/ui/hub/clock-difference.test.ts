// @vitest-environment node

import { expect, test } from 'vitest';
import { ClockDifference } from '#ui/hub/clock-difference.ts';

test('the quickest of the last eight round trips tells by how much the clock is ahead', () => {
  const clock = new ClockDifference();
  expect(clock.ahead).toBe(null);
  // The answer took long on its way back: that looks like a clock that is ahead by half of it.
  clock.take(1000, 3000, 1000, 3000);
  expect(clock.ahead).toBe(1000);
  clock.take(5000, 5020, 5005, 5020);
  expect(clock.ahead).toBe(5);
  for (let k = 0; k < 7; k += 1) clock.take(6000, 6400, 6000, 6400);
  expect(clock.ahead).toBe(5);
  clock.take(6000, 6400, 6000, 6400);
  expect(clock.ahead).toBe(200);
});

test('once the clock is set, what was known of it before counts no more', () => {
  const clock = new ClockDifference();
  clock.take(1000, 1010, 1005, 1010);
  // It was put forward by five minutes; the trip is a slower one.
  clock.take(302_000, 302_100, 2050, 2100);
  expect(clock.ahead).toBe(300_000);
});
