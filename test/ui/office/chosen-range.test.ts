// @vitest-environment node

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { NOTHING_CHOSEN, tapped, toggled } from '#ui/office/chosen-range.ts';

const order = ['a1', 'a2', 'a3', 'b1', 'b2', 'c1'];
const after = (...taps: string[][]) =>
  taps.reduce((choice, tap) => tapped(order, choice, tap), NOTHING_CHOSEN).codes;

test('two taps choose all from the first to the last, whichever is tapped first', () => {
  expect(after(['a2'])).toEqual(['a2']);
  expect(after(['a2'], ['b2'])).toEqual(['a2', 'a3', 'b1', 'b2']);
  expect(after(['b2'], ['a2'])).toEqual(['a2', 'a3', 'b1', 'b2']);
});

test('a door is one tap, and from door to door is two', () => {
  expect(after(['b1', 'b2'])).toEqual(['b1', 'b2']);
  expect(after(['b1', 'b2'], ['c1'])).toEqual(['b1', 'b2', 'c1']);
  expect(after(['b1', 'b2'], ['a1', 'a2', 'a3'])).toEqual(['a1', 'a2', 'a3', 'b1', 'b2']);
});

test('the tap after a range begins anew, and a tap on what alone is chosen lets it go', () => {
  expect(after(['a1'], ['a3'], ['b2'])).toEqual(['b2']);
  expect(after(['a1'], ['a3'], ['b2'], ['c1'])).toEqual(['b2', 'c1']);
  expect(after(['b1', 'b2'], ['b1', 'b2'])).toEqual([]);
  expect(after(['a1'], ['a3'], ['a1', 'a2', 'a3'])).toEqual([]);
});

test('a range is unbroken, in the order of the sheet, and holds both taps', () => {
  const code = fc.constantFrom(...order);
  fc.assert(
    fc.property(code, code, (one, other) => {
      fc.pre(one !== other);
      const codes = after([one], [other]);
      expect(order.join()).toContain(codes.join());
      expect([codes[0], codes.at(-1)].toSorted()).toEqual([one, other].toSorted());
    }),
  );
});

test('one by one, a tap takes or lets go, a door by all of its stickers', () => {
  expect(toggled(['a1'], ['b2']).codes).toEqual(['a1', 'b2']);
  expect(toggled(['a1', 'b2'], ['a1']).codes).toEqual(['b2']);
  expect(toggled(['a1', 'b2'], ['b1', 'b2']).codes).toEqual(['a1', 'b1', 'b2']);
  expect(toggled(['a1', 'b1', 'b2'], ['b1', 'b2']).codes).toEqual(['a1']);
});
