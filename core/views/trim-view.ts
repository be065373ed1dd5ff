import { type Shown, shownText, showValue } from '../length/reading.ts';
import type { Hinge } from '../job/hinge-of.ts';
import type { PlanDoor, TakeOff } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { say } from '../words/say.ts';
import { hingeMarks, nameInside, seenFromFront } from './door-marks.ts';
import { builtSizes, doorView, KEPT } from './door-view.ts';
import type { Drawing, Label, Point, Shape } from '../drawing/model.ts';
import { drawn } from './plan-number.ts';
import { area, at, label, polygon, rectangle } from '../drawing/shapes.ts';

const STEPS = [50, 20, 10, 5, 2, 1];
/** The most that the largest amount may take of the door’s smaller side when it is drawn larger than it is. */
const SHARE = 0.1;

/** How a trim drawing is made: how an amount is read, to 1/64 in or 0.1 mm if not said otherwise, and the hinge side. */
export interface TrimHow {
  readonly reading?: (value: string) => Shown;
  readonly hinge?: Hinge | undefined;
}

/**
 * The door as built, from the front, its horns on, with the line to trim to: what comes off each edge stands beside it,
 * at both its ends where the opening was surveyed. The amounts are drawn larger than they are, and the drawing says how
 * many times, since a sixteenth on a door is no wider than the line. Where an amount is below zero the line runs outside
 * the door.
 */
export function trimView(door: PlanDoor, units: Units, { reading, hinge }: TrimHow = {}): Drawing {
  const { values } = door;
  const { left, right, bottom, top } = values.survey?.takeOff ?? squareOff(door);
  const width = drawn(values.finishedWidth) + 2 * drawn(values.trimEachSide);
  const height = drawn(values.finishedHeight) + 2 * drawn(values.trimEachEnd);
  const hornText = door.stages.find(({ stage }) => stage === 'trim')?.settings.horn;
  const horn = drawn(hornText);
  const stile = drawn(door.parts[0]?.width);
  const small = Math.min(width, height);
  const most = Math.max(
    ...[left.bottom, left.top, right.bottom, right.top, bottom.left, bottom.right, top.left, top.right].map(
      (each) => Math.abs(drawn(each)),
    ),
  );
  const times = STEPS.find((step) => most * step <= small * SHARE) ?? 1;
  const off = (value: string) => drawn(value) * times;
  /** How far the line runs outside the door there: its amount stands beyond it. */
  const out = (value: string) => Math.max(0, -off(value));
  const line = [
    at(off(left.bottom), off(bottom.left)),
    at(width - off(right.bottom), off(bottom.right)),
    at(width - off(right.top), height - off(top.right)),
    at(off(left.top), height - off(top.left)),
  ];
  const read = (value: string) => shownText((reading ?? ((each: string) => showValue(each, units)))(value));
  const amount = (value: string, where: Point, shift: Point, anchor: Label['anchor'], role: string): Label =>
    label(read(value), where, `off-${role}`, 'large', anchor, Infinity, { shift });
  const surveyed = values.survey !== undefined;
  const beside = (edge: 'left' | 'right', ends: TakeOff['left']): Label[] => {
    const left = edge === 'left';
    const where = (value: string, share: number) =>
      at(left ? -out(value) : width + out(value), height * share);
    const put = (value: string, share: number, role: string) =>
      amount(value, where(value, share), at(left ? -0.7 : 0.7, 0), left ? 'end' : 'start', role);
    return surveyed
      ? [put(ends.bottom, 0.14, `${edge}-bottom`), put(ends.top, 0.86, `${edge}-top`)]
      : [put(ends.bottom, 0.4, edge)];
  };
  const over = (edge: 'bottom' | 'top', ends: TakeOff['top']): Label[] => {
    const below = edge === 'bottom';
    const where = (value: string, x: number) => {
      const beyond = Math.max(out(value), horn);
      return at(x, below ? -beyond : height + beyond);
    };
    const put = (value: string, x: number, role: string) =>
      amount(value, where(value, x), at(0, below ? -1.1 : 1), 'middle', role);
    return surveyed
      ? [put(ends.left, 0, `${edge}-left`), put(ends.right, width, `${edge}-right`)]
      : [put(ends.left, width / 2, edge)];
  };
  const note = (text: string, down: number, role: string) =>
    label(text, at(width / 2, -horn), role, 'small', 'middle', Infinity, { shift: at(0, -down) });
  const horns =
    horn === 0
      ? []
      : [0, width - stile].flatMap((x) => [
          area(rectangle(x, -horn, x + stile, 0), 'horn', 'waste'),
          area(rectangle(x, height, x + stile, height + horn), 'horn', 'waste'),
        ]);
  return {
    title: say('drawing.trim', { door: door.door }),
    units,
    shapes: [
      ...horns,
      area(rectangle(0, 0, width, height), 'door-as-built', 'waste'),
      area(polygon(within(line, width, height)), 'stays', 'wood', 'none'),
      ...sightLines(door, units),
      area(polygon(line), 'trim-to', 'none', 'cut'),
      ...hingeMarks(hinge, width, height),
      ...nameInside(door),
      ...seenFromFront(hinge, width, height + horn, 2.4),
      note(say('drawing.trim-times', { times }), 2.5, 'times'),
      ...(typeof hornText === 'string' && horn > 0
        ? [note(say('drawing.horns-off', { horn: read(hornText) }), 3.7, 'horns')]
        : []),
      ...beside('left', left),
      ...beside('right', right),
      ...over('bottom', bottom),
      ...over('top', top),
      ...builtSizes(door, units, { width, height, horn }, KEPT),
    ],
  };
}

/** What comes off for a square opening: each side and each end alike. */
function squareOff({ values: { trimEachSide: side, trimEachEnd: end } }: PlanDoor): TakeOff {
  const [ends, sides] = [
    { bottom: side, top: side },
    { left: end, right: end },
  ];
  return { left: ends, right: ends, bottom: sides, top: sides };
}

/** What one sees through the frame, to know the door by: its openings, an arch among them. */
function sightLines(door: PlanDoor, units: Units): Shape[] {
  return doorView(door, units).shapes.filter(
    (shape) => shape.kind === 'area' && (shape.role === 'bead-line' || shape.role.startsWith('rail-mid')),
  );
}

/** The part of a convex outline that lies on the door. */
function within(line: readonly Point[], width: number, height: number): Point[] {
  const sides: readonly ((point: Point) => number)[] = [
    ({ x }) => x,
    ({ x }) => width - x,
    ({ y }) => y,
    ({ y }) => height - y,
  ];
  return sides.reduce<Point[]>(
    (kept, inside) =>
      kept.flatMap((to, k) => {
        const from = kept.at(k - 1) ?? to;
        const [p, q] = [inside(from), inside(to)];
        const crossing = at(
          from.x + ((to.x - from.x) * p) / (p - q),
          from.y + ((to.y - from.y) * p) / (p - q),
        );
        if (p >= 0 && q >= 0) return [to];
        if (p < 0 && q < 0) return [];
        return q >= 0 ? [crossing, to] : [crossing];
      }),
    [...line],
  );
}
