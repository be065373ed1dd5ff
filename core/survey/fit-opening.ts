import type { DoorSpec, OpeningSurvey } from '../job/job.ts';
import { trimOfSides } from '../job/trim-of-sides.ts';
import { less, type Length, sum } from '../length/length.ts';
import { realOf } from '../length/real.ts';
import { distance } from '../outline/outline.ts';
import type { EachSide } from '../plan/each-side.ts';
import { type Corner, quadrilateral, type Quadrilateral } from './quadrilateral.ts';

/** Amounts to come off one edge at its two ends. */
export interface Fit {
  readonly opening: Quadrilateral;
  /** The opening less each side's reveal, in the door's frame: the door's bottom left corner as built is the origin. */
  readonly outline: { readonly a: Corner; readonly b: Corner; readonly c: Corner; readonly d: Corner };
  readonly builtWidth: number;
  readonly builtHeight: number;
  readonly takeOff: {
    readonly left: { readonly bottom: number; readonly top: number };
    readonly right: { readonly bottom: number; readonly top: number };
    readonly bottom: { readonly left: number; readonly right: number };
    readonly top: { readonly left: number; readonly right: number };
  };
}

/**
 * The door as built laid over its opening: hinge edge parallel to that side, shifted so that the smallest amounts left
 * and right, each less what is to come off there as planned, are equal, then bottom and top. Null when the measures make
 * no quadrilateral, or the reveals leave none.
 */
export function fitOpening(
  spec: Pick<DoorSpec, 'opening' | 'oversize' | 'reveal' | 'hinge'>,
  survey: OpeningSurvey,
): Fit | null {
  const opening = quadrilateral(survey);
  if (opening === null) return null;
  const inset = insetBy(opening, spec.reveal);
  if (inset === null) return null;
  const [low, high] = spec.hinge === 'left' ? [inset.a, inset.d] : [inset.b, inset.c];
  const angle = Math.atan2(high.x - low.x, high.y - low.y);
  const turn = ({ x, y }: Corner): Corner => ({
    x: x * Math.cos(angle) - y * Math.sin(angle),
    y: x * Math.sin(angle) + y * Math.cos(angle),
  });
  const [a, b, c, d] = [turn(inset.a), turn(inset.b), turn(inset.c), turn(inset.d)];
  const builtWidth = built(spec.opening.width, spec.oversize.width);
  const builtHeight = built(spec.opening.height, spec.oversize.height);
  const trim = trimOfSides(spec);
  const moreRight = realOf(less(trim.right, trim.left));
  const moreTop = realOf(less(trim.top, trim.bottom));
  const left = (Math.min(a.x, d.x) + Math.max(b.x, c.x) - builtWidth + moreRight) / 2;
  const bottom = (Math.min(a.y, b.y) + Math.max(c.y, d.y) - builtHeight + moreTop) / 2;
  const [right, top] = [left + builtWidth, bottom + builtHeight];
  const framed = ({ x, y }: Corner): Corner => ({ x: x - left, y: y - bottom });
  return {
    opening,
    outline: { a: framed(a), b: framed(b), c: framed(c), d: framed(d) },
    builtWidth,
    builtHeight,
    takeOff: {
      left: { bottom: a.x - left, top: d.x - left },
      right: { bottom: right - b.x, top: right - c.x },
      bottom: { left: a.y - bottom, right: b.y - bottom },
      top: { left: top - d.y, right: top - c.y },
    },
  };
}

/** The least that comes off left and right, and bottom and top: below zero the door as built does not cover the opening. */
export function leastTakeOff({ takeOff }: Fit): { readonly across: number; readonly along: number } {
  const { left, right, bottom, top } = takeOff;
  return {
    across: Math.min(left.bottom, left.top, right.bottom, right.top),
    along: Math.min(bottom.left, bottom.right, top.left, top.right),
  };
}

/** How far an opening is out of square: the difference of its diagonals. */
export function outOfSquare(survey: Pick<OpeningSurvey, 'diagonalUp' | 'diagonalDown'>): number {
  return realOf(survey.diagonalUp) - realOf(survey.diagonalDown);
}

function built(opening: Length, oversize: Length): number {
  return realOf(sum(opening, oversize));
}

/** The quadrilateral with every side moved inwards by its own amount. */
function insetBy(
  { a, b, c, d }: Quadrilateral,
  reveal: EachSide<Length>,
): { a: Corner; b: Corner; c: Corner; d: Corner } | null {
  const sides = [
    [a, b, reveal.bottom],
    [b, c, reveal.right],
    [c, d, reveal.top],
    [d, a, reveal.left],
  ] as const;
  const moved = sides.map(([from, to, own]) => {
    const amount = realOf(own);
    const long = distance(from, to);
    const normal = { x: -(to.y - from.y) / long, y: (to.x - from.x) / long };
    return {
      point: { x: from.x + normal.x * amount, y: from.y + normal.y * amount },
      along: { x: (to.x - from.x) / long, y: (to.y - from.y) / long },
    };
  });
  const corner = (k: number): Corner | null => {
    const [one, other] = [moved[(k + 3) % 4], moved[k]];
    if (one === undefined || other === undefined) return null;
    const cross = one.along.x * other.along.y - one.along.y * other.along.x;
    if (Math.abs(cross) < Number.EPSILON) return null;
    const t =
      ((other.point.x - one.point.x) * other.along.y - (other.point.y - one.point.y) * other.along.x) / cross;
    return { x: one.point.x + one.along.x * t, y: one.point.y + one.along.y * t };
  };
  const [pa, pb, pc, pd] = [corner(0), corner(1), corner(2), corner(3)];
  return pa === null || pb === null || pc === null || pd === null ? null : { a: pa, b: pb, c: pc, d: pd };
}
