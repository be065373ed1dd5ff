import { type Length, length } from './length.ts';
import type { Units } from './units.ts';

/** The limits that faults and warnings speak of. Common practice, no source. */
export interface Limits {
  /** What a hand-push fit is made up of, at each face. */
  readonly hair: Length;
  readonly thirtySecond: Length;
  readonly sixteenth: Length;
  readonly eighth: Length;
  readonly quarter: Length;
  readonly threeEighths: Length;
  readonly threeInches: Length;
  readonly twelveInches: Length;
}

const INCH: Limits = {
  hair: length(1, 256),
  thirtySecond: length(1, 32),
  sixteenth: length(1, 16),
  eighth: length(1, 8),
  quarter: length(1, 4),
  threeEighths: length(3, 8),
  threeInches: length(3),
  twelveInches: length(12),
};

const METRIC: Limits = {
  hair: length(1, 10),
  thirtySecond: length(4, 5),
  sixteenth: length(3, 2),
  eighth: length(3),
  quarter: length(6),
  threeEighths: length(10),
  threeInches: length(75),
  twelveInches: length(300),
};

/** The limits of a job in these units: round ones of an inch, or round ones in millimetres. Common practice, no source. */
export function limitsFor(units: Units): Limits {
  return units === 'in' ? INCH : METRIC;
}
