import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Length, length, less, over, sum, times } from '#core/length/length.ts';
import { printLength } from '#core/length/print-length.ts';

/**
 * decimal.js shares nothing with the fractions of this project. At 120 digits it tells apart any two of the fractions
 * below, whose denominators stay under 10^24, so that agreement to 100 digits is equality.
 */
const Exact = Decimal.clone({ precision: 120 });

/** A printed length as decimal.js reads it, by its own arithmetic. */
function decimal(printed: string): Decimal {
  const [, whole = '0', numerator = '0', denominator = '1'] =
    /^(?:(\d+)(?:$| ))?(?:(\d+)\/(\d+))?$/.exec(printed) ?? [];
  return new Exact(whole).plus(new Exact(numerator).div(denominator));
}

function expectSame(value: Length, expected: Decimal): void {
  const printed = printLength(value);
  expect(
    decimal(printed).minus(expected).abs().lessThan('1e-100'),
    `${printed} is ${expected.toString()}`,
  ).toBe(true);
}

const ratio = fc.tuple(fc.bigInt(0n, 1_000_000n), fc.bigInt(1n, 10_000n));

test('sums, products and quotients of fractions are those of an independent library', () => {
  fc.assert(
    fc.property(ratio, ratio, ratio, ([an, ad], [bn, bd], [cn, cd]) => {
      const [a, b, c] = [length(an, ad), length(bn, bd), length(cn + 1n, cd)];
      const [x, y, z] = [
        new Exact(String(an)).div(String(ad)),
        new Exact(String(bn)).div(String(bd)),
        new Exact(String(cn + 1n)).div(String(cd)),
      ];
      expectSame(sum(a, b, c), x.plus(y).plus(z));
      expectSame(times(a, b), x.times(y));
      expectSame(over(a, c), x.div(z));
      if (x.greaterThan(y)) expectSame(less(a, b), x.minus(y));
    }),
    { numRuns: 500 },
  );
});

test('a length is printed in lowest terms, which an independent library confirms', () => {
  fc.assert(
    fc.property(ratio, ([n, d]) => {
      const printed = printLength(length(n, d));
      const [, numerator, denominator] = /(\d+)\/(\d+)$/.exec(printed) ?? [];
      if (numerator !== undefined && denominator !== undefined) {
        expect(Number(numerator)).toBeLessThan(Number(denominator));
        const [top, bottom] = new Exact(numerator).div(denominator).toFraction(denominator).map(String);
        expect(`${top}/${bottom}`).toBe(`${numerator}/${denominator}`);
      } else expect(new Exact(String(n)).div(String(d)).isInteger()).toBe(true);
    }),
    { numRuns: 500 },
  );
});
