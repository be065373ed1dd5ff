import { half, larger, length, less, type Length, sum, times } from '../length/length.ts';
import { typeLength } from '../length/type-length.ts';
import type { PlanDoor, PlanPart } from '../plan/plan.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import { readPart, type ReadPart } from '../plan/part-name.ts';
import { say, type Figures } from '../words/say.ts';
import { backFace, type Stretch } from './back-face.ts';
import { inUnits, type SizeOf, type StockSpec } from './stock.ts';

/** Where a sticker goes on a part's back, in the job's units. */
export interface StickerPlace {
  /** `clear`: it outlasts every cut and bears on nothing. `bears`: it outlasts them, but is lifted where the back bears. `none`: it has no place. */
  readonly state: 'clear' | 'bears' | 'none';
  /** The sticker's near edges: along from the bottom end (a rail: from either end), across from the outer edge (a mid rail, a panel: from either edge). */
  readonly along: Length;
  readonly across: Length;
  /** The sticker's sizes along and across the part. */
  readonly long: Length;
  readonly wide: Length;
}

/** What a hand may be off when it sticks one on. */
const BY_HAND: Readonly<Record<Units, Length>> = { in: length(1, 16), mm: length(3, 2) };
/** Distances are given in steps that are found on a rule at once. */
const STEP_ALONG: Readonly<Record<Units, Length>> = { in: length(1, 2), mm: length(10) };
const STEP_ACROSS: Readonly<Record<Units, Length>> = { in: length(1, 16), mm: length(1) };

/**
 * The place of a sticker of a size (in the job's units) on a part: along a stile or rail, its right end toward a stile's
 * top; upright on a panel. In the middle of the longest stretch that is free, moved to a distance that reads well.
 */
export function stickerPlace(door: PlanDoor, part: PlanPart, units: Units, label: SizeOf): StickerPlace {
  const read = readPart(part);
  const upright = read.kind === 'panel';
  const [long, wide] = upright ? [label.height, label.width] : [label.width, label.height];
  const { clear, lasting } = backFace(door, part, units);
  const stile = read.kind === 'stile';
  const acrossStep = read.at === 'mid' || upright ? null : STEP_ACROSS[units];
  const tryOn = (stretches: readonly Stretch[], width: Stretch): StickerPlace | null => {
    const longest = stretches.toSorted((a, b) => less(b.to, b.from).compare(less(a.to, a.from)))[0];
    if (longest === undefined) return null;
    const along = stile
      ? alongStile(longest, long, readPrinted(part.length, units), units)
      : nearEdge(longest, long, BY_HAND[units], upright ? STEP_ACROSS[units] : null);
    const across = nearEdge(width, wide, BY_HAND[units], acrossStep);
    return along === null || across === null ? null : { state: 'clear', along, across, long, wide };
  };
  const free = tryOn(clear.along, clear.across);
  if (free !== null) return free;
  const lifted = tryOn([lasting.along], lasting.across);
  if (lifted !== null) return { ...lifted, state: 'bears' };
  const { along, across } = lasting;
  return {
    state: 'none',
    along: larger(length(0), half(less(sum(along.from, along.to), long))),
    across: larger(length(0), half(less(sum(across.from, across.to), wide))),
    long,
    wide,
  };
}

/** Along a stile, on a step from the end that is nearer. */
function alongStile(stretch: Stretch, size: Length, whole: Length, units: Units): Length | null {
  const near = (free: Stretch) => nearEdge(free, size, BY_HAND[units], STEP_ALONG[units]);
  if (sum(stretch.from, stretch.to).compare(whole) <= 0) return near(stretch);
  const fromTop = near({ from: less(whole, stretch.to), to: less(whole, stretch.from) });
  return fromTop === null ? null : less(whole, fromTop, size);
}

/** Near edge of something in the middle of a stretch, on a step where that leaves the hand its room; null when it does not fit. */
function nearEdge(stretch: Stretch, size: Length, hand: Length, step: Length | null): Length | null {
  const least = sum(stretch.from, hand);
  const most = less(stretch.to, hand, size);
  if (most.compare(least) < 0) return null;
  const middle = half(less(sum(stretch.from, stretch.to), size));
  if (step === null) return middle;
  const stepped = times(step, middle.div(step).floor().valueOf());
  if (stepped.compare(least) >= 0) return stepped;
  const next = sum(stepped, step);
  return next.compare(most) <= 0 ? next : least;
}

/** The size of a stock's sticker in a job's units. */
export function labelIn(stock: StockSpec, units: Units): SizeOf {
  return {
    width: inUnits(stock.label.width, stock.units, units),
    height: inUnits(stock.label.height, stock.units, units),
  };
}

/** The instruction as it stands on the sticker. */
export function placeWords(part: PlanPart, place: StickerPlace, units: Units): string {
  const figures: Figures = { across: typeLength(place.across, units) };
  if (place.state === 'none') return say('paper.stick-none');
  const long = readPrinted(part.length, units);
  const fromTop = less(long, place.along, place.long);
  const end = place.along.compare(fromTop) <= 0 ? 'bottom' : 'top';
  const words = wordsFor(readPart(part), end, {
    ...figures,
    along: typeLength(end === 'bottom' || readPart(part).kind === 'panel' ? place.along : fromTop, units),
  });
  return place.state === 'bears' ? say('paper.stick-bears', { words }) : words;
}

function wordsFor({ kind, at }: ReadPart, end: 'top' | 'bottom', figures: Figures): string {
  switch (kind) {
    case 'stile':
      return say(`paper.stick-stile-${end}`, figures);
    case 'rail':
      return at === 'mid' ? say('paper.stick-mid-rail') : say('paper.stick-rail', figures);
    case 'panel':
      return say('paper.stick-panel', figures);
  }
}
