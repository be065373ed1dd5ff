import { expect, test } from 'vitest';
import { byHowMuch } from '#core/measured/by-how-much.ts';

test('a change of an exact length is told by how much, and which way', () => {
  expect(byHowMuch('13 7/8', '14 3/16', 'in')).toEqual({ by: '5/16', more: true });
  expect(byHowMuch('374 13/20', '370', 'mm')).toEqual({ by: '4 13/20', more: false });
});

test('words, counts and figures with decimals are not told by how much', () => {
  expect(byHowMuch('left', 'right', 'in')).toBe(null);
  expect(byHowMuch(8, 12, 'in')).toBe(null);
  expect(byHowMuch('3.000000', '3.100000', 'in')).toBe(null);
});
