import type { OpeningSurvey } from '../job/job.ts';
import { real, type Real, realOf } from '../length/real.ts';
import { apex } from './apex.ts';

/** The six measures of an opening, as the job file names them. */
export type MeasureName = keyof OpeningSurvey;

/** One of the six measures, and what it would be if it alone were the wrong one. */
export interface Misfit {
  readonly measure: MeasureName;
  /** The value that closes the opening over the other five. */
  readonly wouldBe: Real;
  /** What was written less what it would be. */
  readonly off: Real;
}

type CornerName = 'a' | 'b' | 'c' | 'd';
interface Line {
  readonly from: CornerName;
  readonly to: CornerName;
  /** The other two corners: both ends of a side lie on one hand of the line through them, those of a diagonal on either. */
  readonly others: readonly [CornerName, CornerName];
  readonly diagonal: boolean;
}

const LINES: Readonly<Record<MeasureName, Line>> = {
  widthBottom: { from: 'a', to: 'b', others: ['c', 'd'], diagonal: false },
  widthTop: { from: 'd', to: 'c', others: ['a', 'b'], diagonal: false },
  heightLeft: { from: 'a', to: 'd', others: ['b', 'c'], diagonal: false },
  heightRight: { from: 'b', to: 'c', others: ['a', 'd'], diagonal: false },
  diagonalUp: { from: 'a', to: 'c', others: ['b', 'd'], diagonal: true },
  diagonalDown: { from: 'b', to: 'd', others: ['a', 'c'], diagonal: true },
};
const NAMES = Object.keys(LINES) as MeasureName[];
/** Each of the six by its name. */
type Measures = (name: MeasureName) => number;

/** What rounding in the reckoning itself may leave, as a share of the length: far below what a tape shows. */
const ROUNDING = 1e-6;

/**
 * What each of six measures would be if it were the wrong one, the largest mistake first. A measure whose other five
 * make no opening, or none with all its corners outward, is left out: then one of those is the wrong one. Empty where no
 * single measure can be.
 */
export function misfits(survey: OpeningSurvey): Misfit[] {
  const typed: Measures = (name) => realOf(survey[name]);
  return NAMES.flatMap((measure): Misfit[] => {
    const wouldBe = closing(typed, LINES[measure]);
    return wouldBe === null || !agree((name) => (name === measure ? wouldBe : typed(name)))
      ? []
      : [{ measure, wouldBe: real(wouldBe), off: real(typed(measure) - wouldBe) }];
  }).toSorted((one, other) => Math.abs(other.off) - Math.abs(one.off));
}

/** Do all six close one opening whose corners point outward? One with a corner inward is closed by one line and not by another. */
function agree(measures: Measures): boolean {
  return NAMES.every((name) => {
    const closes = closing(measures, LINES[name]);
    return closes !== null && Math.abs(closes - measures(name)) <= ROUNDING * closes;
  });
}

/**
 * The length of one line from the other five: both its ends are the third corner of a triangle on the line between the
 * other two. Null where one of these is no triangle.
 */
function closing(measures: Measures, { from, to, others: [one, other], diagonal }: Line): number | null {
  const apart = (a: CornerName, b: CornerName) => between(measures, a, b);
  const base = apart(one, other);
  const start = apex(base, apart(one, from), apart(other, from));
  const end = apex(base, apart(one, to), apart(other, to));
  if (start === null || end === null) return null;
  return Math.hypot(start.x - end.x, diagonal ? start.y + end.y : start.y - end.y);
}

function between(measures: Measures, a: CornerName, b: CornerName): number {
  const name = NAMES.find((each) => {
    const { from, to } = LINES[each];
    return (from === a && to === b) || (from === b && to === a);
  });
  if (name === undefined) throw new Error(`no measure between ${a} and ${b}`);
  return measures(name);
}
