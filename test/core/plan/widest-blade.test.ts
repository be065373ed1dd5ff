import { expect, test } from 'vitest';
import { widestBlade } from '#core/plan/widest-blade.ts';

// The radius that each width goes round, in inches: tables that band saw blades are sold with, from memory.
test.each([
  ['6 11/32', '1/2'],
  ['2 1/2', '1/2'],
  ['2 31/64', '3/8'],
  ['1 7/16', '3/8'],
  ['1 27/64', '1/4'],
  ['5/8', '1/4'],
  ['39/64', '1/8'],
  ['3/16', '1/8'],
  ['11/64', null],
])('a radius of %s in takes no blade wider than %s in', (radius, blade) => {
  expect(widestBlade(radius, 'in')).toBe(blade);
});

// The same in millimetres: blades of 13, 10, 6 and 3 mm, each radius rounded up.
test.each([
  ['161', '13'],
  ['64', '13'],
  ['63.9', '10'],
  ['37', '10'],
  ['36.5', '6'],
  ['16', '6'],
  ['15.9', '3'],
  ['5', '3'],
  ['4.9', null],
])('a radius of %s mm takes no blade wider than %s mm', (radius, blade) => {
  expect(widestBlade(radius, 'mm')).toBe(blade);
});

test('in either unit the same curve takes a blade of the same width, to a millimetre', () => {
  for (const [inches, mm] of [
    ['1/2', '13'],
    ['3/8', '10'],
    ['1/4', '6'],
    ['1/8', '3'],
  ] as const) {
    const [n = 0, d = 1] = inches.split('/').map(Number);
    expect(Math.abs((n / d) * 25.4 - Number(mm))).toBeLessThan(1);
  }
});
