// @vitest-environment node

import { expect, test } from 'vitest';
import { checkOf } from '#ui/fitting/closure.ts';

const none = { bottom: '0.000000', top: '0.000000' };
const across = { left: '0.000000', right: '0.000000' };
const takeOff = { left: none, right: none, bottom: across, top: across };
const check = (base: 'width' | 'height', closure: string, units: 'in' | 'mm' = 'in') =>
  checkOf({ base, closure, takeOff }, units);

test('on a high opening the right height is what is checked, on a wide one the top width', () => {
  expect(check('height', '0.000000').measure).toBe('heightRight');
  expect(check('width', '0.000000').measure).toBe('widthTop');
});

test.each([
  ['0.000000', 'in', true, 'differs by less than 1/64;'],
  ['0.011196', 'in', true, 'differs by 1/64;'],
  ['-0.031250', 'in', true, 'differs by 1/32;'],
  ['0.031251', 'in', false, 'differ by 1/32'],
  ['-0.5', 'in', false, 'differ by 1/2'],
  ['0.8', 'mm', true, 'differs by 0.8;'],
  ['0.9', 'mm', false, 'differ by 0.9'],
] as const)('a closure of %s %s is good: %s, and told as “%s”', (closure, units, good, words) => {
  const told = check('height', closure, units);
  expect(told.good).toBe(good);
  expect(told.words).toContain(words);
  expect(told.words).toMatch(good ? /^Good: / : /^One of the six measures does not fit/);
  // Where they do not agree, none of the six is blamed.
  expect(told.words.includes('height, right')).toBe(good);
});
