import { expect, test } from 'vitest';
import { Budget } from '#main/kiosk/budget.ts';

test('what keeps failing is tried again so many times a minute and no more', () => {
  const budget = new Budget(3);
  expect([0, 1, 2, 3].map((time) => budget.take(time))).toEqual([true, true, true, false]);
  expect(budget.take(59_999)).toBe(false);
  expect(budget.take(60_000)).toBe(true);
  budget.renew();
  expect(budget.take(60_001)).toBe(true);
});
