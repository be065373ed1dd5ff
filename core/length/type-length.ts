import type { Units } from './units.ts';
import type { Length } from './length.ts';
import { printLength } from './print-length.ts';

/** A length as a person would type it: a fraction of an inch; in millimetres decimals, where they come to an end. */
export function typeLength(value: Length, units: Units): string {
  if (units === 'in') return printLength(value);
  const decimals = value.toString();
  return decimals.includes('(') ? printLength(value) : decimals;
}
