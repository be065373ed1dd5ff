import Fraction from 'fraction.js';
import { type Length, times } from '../length/length.ts';
import { findSpecies } from './find-species.ts';
import { CHANGE_COEFFICIENTS } from './species.ts';

/**
 * How much wood grows across the grain: ΔD = D · C · (M₂ − M₁), moisture in percent; negative when it shrinks.
 * Source: Wood Handbook, FPL-GTR-190 (2010), eq. 13-2, valid from 6 to 14 percent. 0 for a species that is not in its table.
 */
export function changeAcross(
  width: Length,
  species: string,
  sawn: 'flat' | 'quarter',
  points: Length,
): Length {
  const found = findSpecies(species);
  if (found === null) return times(width, 0);
  const coefficients = CHANGE_COEFFICIENTS[found];
  const coefficient = new Fraction(sawn === 'flat' ? coefficients.tangential : coefficients.radial) as Length;
  return times(times(width, coefficient), points);
}

/** A number as people write it ("7.5") as an exact value. */
export function decimalLength(value: number): Length {
  return new Fraction(String(value)) as Length;
}
