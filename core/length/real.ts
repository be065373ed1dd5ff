import type { Length } from './length.ts';

declare const measured: unique symbol;

/** A figure that has left the fractions by a square root or an angle: a double, printed with six decimals. */
export type Real = number & { readonly [measured]: 'real' };

/** The nearest double to an exact length. */
export function realOf(value: Length): Real {
  return value.valueOf() as Real;
}

/** Takes a double for a figure that has left the fractions. */
export function real(value: number): Real {
  return value as Real;
}

/** Six decimals, as the plan prints every figure that is no fraction. Throws on a figure that is not finite: a broken invariant. */
export function printReal(value: Real): string {
  if (!Number.isFinite(value)) throw new RangeError(`a figure that is not finite: ${String(value)}`);
  const millionths = BigInt(Math.round(Math.abs(value) * 1e6));
  const sign = value < 0 && millionths > 0n ? '-' : '';
  return `${sign}${millionths / 1_000_000n}.${String(millionths % 1_000_000n).padStart(6, '0')}`;
}
