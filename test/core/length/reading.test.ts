import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MEASURES, showDecimal, showIn, shownText, showOther, showValue } from '#core/length/reading.ts';

test('what the rounding can show is shown as it is', () => {
  expect(shownText(showValue('14 3/4', 'in'))).toBe('14\u00a03/4');
  expect(shownText(showValue('15/64', 'in'))).toBe('15/64');
  expect(shownText(showValue('375 1/2', 'mm'))).toBe('375.5');
});

test('what was rounded away is said', () => {
  expect(shownText(showValue('6 953/3584', 'in'))).toBe('≈\u00a06\u00a017/64');
  expect(shownText(showValue('15/64', 'in', { denominator: 16, places: 1 }))).toBe('≈\u00a01/4');
  expect(shownText(showValue('9.655034', 'in'))).toBe('≈\u00a09\u00a021/32');
});

test('the other measure is an inch of 25.4 mm', () => {
  expect(shownText(showOther('1', 'in'))).toBe('25.4');
  expect(shownText(showOther('14 3/4', 'in'))).toBe('≈\u00a0374.7');
  expect(shownText(showOther('25.4', 'mm'))).toBe('1');
  expect(shownText(showDecimal('14 3/4'))).toBe('14.75');
});

test('a shown fraction is never further off than half of its rounding', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 1, max: 5000 }), (n, d) => {
      const { whole, numerator = '0', denominator = '1' } = showValue(`${n}/${d}`, 'in');
      const shown = Number(whole === '' ? 0 : whole) + Number(numerator) / Number(denominator);
      expect(Math.abs(shown - n / d)).toBeLessThanOrEqual(1 / 128 + 1e-9);
    }),
  );
});

test('one value in each measure: fractions, thousandths of an inch, millimetres', () => {
  const inEach = (value: string | number, units: 'in' | 'mm') =>
    MEASURES[units].map((measure) => shownText(showIn(value, units, measure)));
  expect(inEach('14 3/4', 'in')).toEqual(['14\u00a03/4', '≈\u00a0374.7', '14.75']);
  expect(inEach('1/64', 'in')).toEqual(['1/64', '≈\u00a00.4', '≈\u00a00.016']);
  expect(inEach('25.4', 'mm')).toEqual(['25.4', '1']);
  expect(inEach(12, 'in')).toEqual(['12', '12', '12']);
  expect(inEach('top', 'in')).toEqual(['top', 'top', 'top']);
});
