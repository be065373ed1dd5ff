import fc from 'fast-check';
import { expect, test } from 'vitest';
import { length } from '#core/length/length.ts';
import { parseLength } from '#core/length/parse-length.ts';
import { isPrintedLength, printLength } from '#core/length/print-length.ts';
import { shownText, showValue } from '#core/length/reading.ts';

const read = (text: unknown, units: 'in' | 'mm' = 'in') => {
  const parsed = parseLength(text, units);
  return parsed.ok ? printLength(parsed.value) : parsed.fault.code;
};

test.each([
  ['14 3/4', '14 3/4'],
  ['14-3/4', '14 3/4'],
  ['3/4', '3/4'],
  ['6/8', '3/4'],
  ['14.75', '14 3/4'],
  ['.5', '1/2'],
  ['14 3/4"', '14 3/4'],
  ['1\' 2 3/4"', '14 3/4'],
  ["2'", '24'],
  ['9/4', '2 1/4'],
  [14.75, '14 3/4'],
  [0.1, '1/10'],
  [0, '0'],
  ['-1/8', '-1/8'],
])('%j is read as %s', (given, printed) => {
  expect(read(given)).toBe(printed);
});

test.each([
  ['', 'length-form'],
  ['abc', 'length-form'],
  ['1e4', 'length-form'],
  [1e400, 'length-form'],
  [1e-9, 'length-form'],
  ['1/0', 'length-denominator'],
  ['3 / 4', 'length-form'],
  ['1 2 3/4', 'length-form'],
  ['123456789012345678901', 'length-digits'],
  ['1'.repeat(1_000_000), 'length-digits'],
  ['99999', 'length-size'],
  [null, 'length-type'],
  [true, 'length-type'],
  [['1'], 'length-type'],
])('%j is refused as %s', (given, code) => {
  expect(read(given)).toBe(code);
});

test('a job in millimetres takes no feet or inch marks', () => {
  expect(read('14"', 'mm')).toBe('length-units');
  expect(read('375.5', 'mm')).toBe('375 1/2');
});

test('whatever is printed is in lowest terms and reads back as itself', () => {
  fc.assert(
    fc.property(fc.bigInt({ min: 0n, max: 10_000n }), fc.bigInt({ min: 1n, max: 4096n }), (n, d) => {
      const printed = printLength(length(n, d));
      expect(isPrintedLength(printed)).toBe(true);
      expect(read(printed)).toBe(printed);
    }),
  );
});

test('what is copied from a screen, with its no-break spaces, is typed in as it stands', () => {
  const copied = shownText(showValue('14 3/4', 'in'));
  expect(copied).toBe('14\u00a03/4');
  for (const text of [copied, '14\u202f3/4', '1\'\u00a02\u00a03/4"'])
    expect(parseLength(text, 'in')).toEqual({ ok: true, value: length(59, 4) });
});
