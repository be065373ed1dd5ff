import { expect, test } from 'vitest';
import { type Cell, growWrapped, namesAt } from '#ui/station/grow.ts';

/** A fraction of two digits at its least size of 48, under a short name. */
const cell = (width = 60): Cell => ({ name: { width: 50, height: 19 }, number: { width, height: 83 } });

test('two numbers with a whole side of the screen stand three times as large', () => {
  expect(growWrapped([cell(), cell()], { width: 567, height: 520 })).toBe(3);
});

test('many numbers wrap into rows and grow as far as the rows have height', () => {
  const room = { width: 567, height: 520 };
  const grown = Array.from({ length: 9 }, (_, k) =>
    growWrapped(
      Array.from({ length: k + 1 }, () => cell(90)),
      room,
    ),
  );
  expect(grown).toEqual(grown.toSorted((a, b) => b - a));
  expect(grown[3]).toBeGreaterThan(1.8);
  expect(grown.at(-1)).toBeGreaterThan(1);
  // Four stand two and two: neither beside one another, nor in three rows, would they have room at that size.
  const times = grown[3] ?? 0;
  expect(3 * 90 * times).toBeGreaterThan(room.width - 2 * 18 * times);
  expect(2 * (83 * times + 19 * namesAt(times))).toBeLessThanOrEqual(room.height);
});

test('a number as wide as its room stays, and one wider than its room too', () => {
  expect(growWrapped([cell(560)], { width: 567, height: 520 })).toBe(1);
  expect(growWrapped([cell(700)], { width: 567, height: 520 })).toBe(1);
});

test('where numbers have to get smaller their names stay large enough to be read', () => {
  expect(namesAt(0.65)).toBe(0.9);
  expect(namesAt(1)).toBe(1);
});
