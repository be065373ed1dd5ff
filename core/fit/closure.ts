import { type Length, less, sign, smaller, sum, times, ZERO } from '../length/length.ts';
import { type Real, real, realOf } from '../length/real.ts';
import type { PartName } from '../plan/part-name.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { Tolerances } from '../shop/shop-profile.ts';
import type { StageId } from '../stages/stage-id.ts';

/** What has to close on a door, or to have room. */
export type ClosureId =
  | 'shoulders'
  | 'tenon-groove'
  | 'tenon-ends'
  | 'mortise-floor'
  | 'haunch'
  | 'mitres'
  | 'mid-mitres'
  | 'panel-width'
  | 'panel-length'
  | 'outside-width'
  | 'outside-height';

/** A setting that may be off by the shop's own ±, and how many times that counts. */
export interface Source {
  readonly part: PartName;
  readonly stage: StageId;
  readonly setting: string;
  readonly at?: PlaceName;
  readonly by: keyof Tolerances;
  readonly times: Length;
}

/** A place where parts meet, as the plan has it: its room, between which limits it must stay, and what moves it. */
export interface Meeting {
  readonly id: ClosureId;
  readonly part: PartName;
  readonly room: Length;
  readonly least: Length | null;
  readonly most: Length | null;
  readonly sources: readonly [Source, ...Source[]];
}

/**
 * closes: whatever is off, by the shop's own ±. by-luck: not with all of it off at once to the same side. unlikely: not
 * even with as much off as is likely. open: not with everything exact.
 */
export type Verdict = 'closes' | 'by-luck' | 'unlikely' | 'open';

/** A range of room. */
export interface Range<T> {
  readonly least: T;
  readonly most: T;
}

/** A meeting judged by the shop's own ±. Lengths in the job's units; parts that are alike are named together. */
export interface Closure extends Omit<Meeting, 'part' | 'sources'> {
  readonly parts: readonly PartName[];
  /** All of the ± added up. */
  readonly worst: Range<Length>;
  /** The root of the sum of their squares. */
  readonly likely: Range<Real>;
  readonly verdict: Verdict;
  /** The setting whose ± counts most. */
  readonly gate: Source;
}

/** Judges a meeting: worst case and root-sum-square, which limit they break, and the setting that counts most. */
export function judge({ part, sources, ...meeting }: Meeting, tolerances: Tolerances): Closure {
  const shares = sources.map((source) => times(tolerances[source.by], source.times));
  const all = shares.reduce((total, share) => sum(total, share), ZERO);
  const squares = shares.reduce((total, share) => sum(total, times(share, share)), ZERO);
  const root = Math.sqrt(realOf(squares));
  const room = realOf(meeting.room);
  const largest = shares.reduce((best, share, k) => (share.compare(shares[best] ?? ZERO) > 0 ? k : best), 0);
  return {
    ...meeting,
    parts: [part],
    worst: { least: less(meeting.room, all), most: sum(meeting.room, all) },
    likely: { least: real(room - root), most: real(room + root) },
    verdict: verdictOf(leftOf(meeting), all, squares),
    gate: sources[largest] ?? sources[0],
  };
}

/** How far the room is from the nearer of its limits; null where it has none. */
function leftOf({ room, least, most }: Pick<Meeting, 'room' | 'least' | 'most'>): Length | null {
  const under = least === null ? null : less(room, least);
  const above = most === null ? null : less(most, room);
  return under === null ? above : above === null ? under : smaller(under, above);
}

/** Exact: squares are compared, no root is drawn. */
function verdictOf(left: Length | null, all: Length, squares: Length): Verdict {
  if (left === null) return 'closes';
  if (sign(left) < 0) return 'open';
  if (all.compare(left) <= 0) return 'closes';
  return squares.compare(times(left, left)) <= 0 ? 'by-luck' : 'unlikely';
}
