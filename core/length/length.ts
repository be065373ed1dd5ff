import Fraction from 'fraction.js';

declare const exact: unique symbol;

/** An exact length in a job's units: a fraction, made by parsing or from other lengths. It never meets JSON. */
export type Length = Fraction & { readonly [exact]: 'length' };

/** A length from a whole number and a denominator, for values that the program itself brings. */
export function length(numerator: number | bigint, denominator: number | bigint = 1): Length {
  return new Fraction(numerator, denominator) as Length;
}

/** No length. */
export const ZERO: Length = length(0);

/** The sum of lengths. */
export function sum(first: Length, ...others: readonly Length[]): Length {
  let total: Fraction = first;
  for (const each of others) total = total.add(each);
  return total as Length;
}

/** What is left of the first after all the others are taken away; it may be negative. */
export function less(first: Length, ...others: readonly Length[]): Length {
  let left: Fraction = first;
  for (const each of others) left = left.sub(each);
  return left as Length;
}

/** A whole or exact multiple. */
export function times(value: Length, factor: number | Length): Length {
  return value.mul(factor) as Length;
}

/** One length divided by another or by a whole number. */
export function over(value: Length, divisor: number | Length): Length {
  return value.div(divisor) as Length;
}

/** Half of a length, exactly. */
export function half(value: Length): Length {
  return value.div(2) as Length;
}

/** Whether a length is over, at or under zero: 1, 0 or -1. Read off it, with nothing reckoned. */
export function sign(value: Length): -1 | 0 | 1 {
  return value.n === 0n ? 0 : value.s < 0n ? -1 : 1;
}

/** The larger of two lengths. */
export function larger(a: Length, b: Length): Length {
  return a.compare(b) >= 0 ? a : b;
}

/** The smaller of two lengths. */
export function smaller(a: Length, b: Length): Length {
  return a.compare(b) <= 0 ? a : b;
}

/** The largest of a list that is not over a limit; null when all are over it. */
export function largestUpTo(list: readonly Length[], limit: Length): Length | null {
  return list.reduce<Length | null>(
    (best, each) => (each.compare(limit) <= 0 && (best === null || each.compare(best) > 0) ? each : best),
    null,
  );
}
