import type { Length } from './length.ts';

/** A length as the plan prints it: lowest terms, "14 3/4", "3/4", "0"; exact whatever the denominator. */
export function printLength(value: Length): string {
  const sign = value.s < 0n ? '-' : '';
  const whole = value.n / value.d;
  const rest = value.n % value.d;
  if (rest === 0n) return `${sign}${whole}`;
  return whole === 0n ? `${sign}${rest}/${value.d}` : `${sign}${whole} ${rest}/${value.d}`;
}

/** A printed length read back exactly. Only for what printLength wrote; null for anything else. */
export function isPrintedLength(text: string): boolean {
  return /^(0|[1-9]\d*|[1-9]\d* [1-9]\d*\/[1-9]\d*|[1-9]\d*\/[1-9]\d*)$/.test(text);
}
