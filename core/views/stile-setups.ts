import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Dimension, Shape } from '../drawing/model.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { area, at, dimension, label, rectangle } from '../drawing/shapes.ts';
import { faceSeen } from '../plan/face-seen.ts';
import { drawnEnd, placed, type StileLie } from './stile-blank.ts';

/** How long a stop block is drawn, in widths of the member. */
export const BLOCK = 0.55;

/** A stop block against the end at x = 0, so thick in widths of the member. */
export function stopBlock(width: number, thick = BLOCK): Shape[] {
  return [
    area(rectangle(-width * thick, 0, 0, width * 0.75), 'stop', 'tool'),
    label(say('drawing.stop'), at((-width * thick) / 2, width * 0.375), 'stop-name', 'small', 'middle'),
  ];
}

/** Which face one sees, written on the blank; the other one where the drawing is mirrored, its left end at the right. */
export function faceNote(part: PlanPart, lie: StileLie, seenMirrored = false): Shape[] {
  const { width } = profileOf(part);
  const seen = faceSeen(part, lie);
  const face = !seenMirrored ? seen : seen === 'front' ? 'back' : 'front';
  const beside = lie.above === 'bead' ? 0.14 : 0.86;
  return [
    label(
      say(`drawing.${face}-toward-you`),
      at(
        drawnEnd(part, lie) - width * 0.12,
        width * (lie.leftOut === undefined && beside > 0.5 ? 0.5 : beside),
      ),
      'face',
      'normal',
      'end',
      width * 0.26,
    ),
  ];
}

/**
 * How a stile lies for a place from so far to so far from its left end. A place far from that end is drawn beside it,
 * the stretch between them left out; short of that the stile is drawn from its end on, whole where that is most of it.
 */
export function lieFor(part: PlanPart, lie: StileLie, from: number, to: number): StileLie {
  const { width, length } = profileOf(part);
  const [kept, next] = [width * HEAD, from - width * 0.75];
  if (next - kept < width) return { ...lie, upTo: reachOf(to, width, length) };
  const upTo = Math.min(length, to + width * 1.5);
  return { ...lie, upTo: length - upTo < width ? length : upTo, leftOut: { from: kept, to: next } };
}

/** How much of a stile's end is kept where a stretch is left out, in its widths: its name stands there. */
const HEAD = 1.35;

/** A dimension from a stile's left end, broken where a stretch of it is left out. */
export function fromEnd(
  part: PlanPart,
  lie: StileLie,
  name: string,
  value: string,
  y: number,
  side: Dimension['side'],
  row: number,
  more: { readonly place?: PlaceName; readonly toY?: number } = {},
): Shape {
  const { x, brokenAt } = placed(lie, profileOf(part).width, drawn(value));
  return dimension(name, value, at(0, y), at(x, more.toY ?? y), side, row, {
    datum: true,
    ...(more.place === undefined ? {} : { place: more.place }),
    ...(brokenAt === null ? {} : { brokenAt }),
  });
}

/** How much of the length is drawn: what the setting needs and a little more; the whole when that is most of it. */
function reachOf(needed: number, width: number, length: number): number {
  const wanted = needed + Math.max(width * 1.6, needed * 0.35);
  return wanted > length * 0.8 ? length : wanted;
}
