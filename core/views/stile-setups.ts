import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Dimension, Shape } from '../drawing/model.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { area, at, dimension, label, polygon, rectangle, stroke } from '../drawing/shapes.ts';
import { faceSeen } from '../plan/face-seen.ts';
import { drawnEnd, placed, stileBlank, type StileLie } from './stile-blank.ts';

/** How thick the table is drawn, and how long a stop block, in widths of the member. */
const TABLE = 0.17;
const BLOCK = 0.55;

/** A stop block against the end at x = 0, so thick in widths of the member. */
export function stopBlock(width: number, thick = BLOCK): Shape[] {
  return [
    area(rectangle(-width * thick, 0, 0, width * 0.75), 'stop', 'tool'),
    label(say('drawing.stop'), at((-width * thick) / 2, width * 0.375), 'stop-name', 'small', 'middle'),
  ];
}

/** The table that a member lies on, from the stop's outer side to where the member is broken off. */
export function tableUnder(width: number, to: number, thick = BLOCK): Shape[] {
  return [
    area(rectangle(-width * thick, -width * TABLE, to, 0), 'table', 'tool'),
    label(
      say('drawing.table'),
      at(width * 0.06, (-width * TABLE) / 2),
      'table-name',
      'small',
      'start',
      width * TABLE,
    ),
  ];
}

/** Which face one sees, written on the blank; the other one where the drawing is mirrored, its left end at the right. */
function faceNote(part: PlanPart, lie: StileLie, seenMirrored = false): Shape[] {
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

/** A mitre: this end against the stop, sight edge down, the blade leaning toward the stop; what is set is where it meets the table. */
export function mitreSetup(part: PlanPart, { settings }: StageOf<'mitre-end'>): Shape[] {
  const { width, bead } = profileOf(part);
  const leftEnd = settings.fromEnd;
  const [sight, shoulder] = [drawn(settings.sightEdge), drawn(settings.shoulderLine)];
  const lie = lieFor(part, { leftEnd, above: 'outer' }, Math.min(sight, shoulder), Math.max(sight, shoulder));
  const [x1, x2, end] = [placed(lie, width, sight).x, placed(lie, width, shoulder).x, drawnEnd(part, lie)];
  return [
    ...stileBlank(part, lie),
    ...stopBlock(width),
    ...tableUnder(width, end),
    ...blade(x1, x2, bead, width),
    area(stroke(at(x1, 0), at(x2, bead)), 'mitre', 'none', 'cut'),
    ...faceNote(part, lie),
    fromEnd(part, lie, 'shoulderLine', settings.shoulderLine, 0, 'above', 1, { toY: bead }),
    fromEnd(part, lie, 'sightEdge', settings.sightEdge, 0, 'below', 1),
    dimension('height', settings.height, at(end, 0), at(end, bead), 'right', 1, { datum: true }),
  ];
}

/** The tilted blade through the table, leaning toward the stop at the left. */
export function blade(sight: number, shoulder: number, bead: number, width: number): Shape[] {
  const kerf = bead * 0.5;
  const low = -Math.max(bead * 1.5, width * 0.34);
  return [
    area(
      polygon([
        at(shoulder, bead),
        at(shoulder - kerf, bead),
        at(sight - kerf - low, low),
        at(sight - low, low),
      ]),
      'blade',
      'tool',
    ),
    label(say('drawing.blade'), at(sight - low + width * 0.06, low * 0.8), 'blade-name', 'small', 'start'),
  ];
}

/** The notch between the mitres of a mid rail: crosscuts side by side, sight edge down. */
export function notchSetup(part: PlanPart, { settings: s }: StageOf<'notch'>): Shape[] {
  const { width, bead } = profileOf(part);
  const [from, to] = [drawn(s.from), drawn(s.to)];
  const lie = lieFor(part, { leftEnd: s.fromEnd, above: 'outer' }, from, to);
  const [x1, x2, end] = [placed(lie, width, from).x, placed(lie, width, to).x, drawnEnd(part, lie)];
  return [
    ...stileBlank(part, lie),
    ...stopBlock(width),
    ...tableUnder(width, end),
    area(rectangle(x1, 0, x2, bead), 'notch', 'waste', 'cut'),
    ...faceNote(part, lie),
    ...(from > 0 ? [fromEnd(part, lie, 'from', s.from, 0, 'below', 1)] : []),
    fromEnd(part, lie, 'to', s.to, 0, 'below', from > 0 ? 2 : 1),
    dimension('length', s.length, at(x1, width), at(x2, width), 'above', 1),
    dimension('height', s.height, at(end, 0), at(end, bead), 'right', 1, { datum: true }),
  ];
}
