import bwipjs from 'bwip-js/node';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { code128Widths } from '#labels/code-128.ts';
import { checkValue, valuesOf } from './code-128-table.ts';

function valuesIn(text: string): number[] {
  const bars: (readonly [number, number])[] = [];
  let x = 0;
  for (const [k, width] of code128Widths(text).entries()) {
    if (k % 2 === 0) bars.push([x, x + width]);
    x += width;
  }
  return valuesOf(bars);
}

/** The text that symbols in the sets B and C stand for. */
function textOf([start = 0, ...symbols]: readonly number[]): string {
  let set = start === 105 ? 'C' : 'B';
  let text = '';
  for (const value of symbols.slice(0, -1)) {
    if (set === 'C' && value === 100) set = 'B';
    else if (set === 'B' && value === 99) set = 'C';
    else text += set === 'C' ? String(value).padStart(2, '0') : String.fromCharCode(value + 32);
  }
  return text;
}

const LETTERS = '0123456789ABCDEFGHJKLMNPQRSTUVWX-*';
const codes = fc.oneof(
  fc.string({ unit: fc.constantFrom(...LETTERS), minLength: 1, maxLength: 14 }),
  fc.string({ unit: fc.constantFrom(...'0123456789A'), minLength: 1, maxLength: 14 }),
);

test('what is encoded reads back, with the check value of the rule', () => {
  fc.assert(
    fc.property(codes, (text) => {
      const values = valuesIn(text);
      expect(textOf(values)).toBe(text);
      expect(values.at(-1)).toBe(checkValue(values.slice(0, -1)));
    }),
  );
});

test('a Code 128 is never longer than another encoder makes it', () => {
  fc.assert(
    fc.property(codes, (text) => {
      const other: unknown = bwipjs.raw({ bcid: 'code128', text })[0];
      const { sbs = [] } = other as { sbs?: readonly number[] };
      const total = (widths: readonly number[]) => widths.reduce((a, b) => a + b, 0);
      expect(sbs.length).toBeGreaterThan(0);
      expect(total(code128Widths(text))).toBeLessThanOrEqual(total(sbs));
    }),
  );
});

test('what is not printable ASCII is no text for a Code 128', () => {
  expect(() => code128Widths('Ö')).toThrow('no Code 128');
  expect(() => code128Widths('')).toThrow('no Code 128');
});
