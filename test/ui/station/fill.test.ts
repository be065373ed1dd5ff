import { expect, test } from 'vitest';
import { mostThatFits } from '#ui/station/fill.ts';

test('what fits at its most stands at its most, asked once', () => {
  let asked = 0;
  expect(mostThatFits(() => (asked += 1) > 0, 2)).toBe(2);
  expect(asked).toBe(1);
});

test('what fits up to a size comes within a small step under it, never over', () => {
  for (const limit of [1, 1.1, 1.37, 1.62, 1.99]) {
    const found = mostThatFits((times) => times <= limit, 2);
    expect(found).toBeLessThanOrEqual(limit);
    expect(found).toBeGreaterThan(limit - 1 / 32);
  }
});

test('what fits at no size stays at its least', () => {
  expect(mostThatFits(() => false, 2)).toBe(1);
});
