import type { Drawing, Label, Point, Shape } from '../drawing/model.ts';
import { area, at, label, polygon, rectangle } from '../drawing/shapes.ts';
import type { Hinge } from '../job/hinge-of.ts';
import { type Shown, shownText, showValue } from '../length/reading.ts';
import type { Units } from '../length/units.ts';
import { parsePart } from '../plan/part-name.ts';
import { partsOf } from '../plan/parts-of.ts';
import type { PlanDoor, TakeOff } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { trimOf } from '../plan/trim-of.ts';
import { say } from '../words/say.ts';
import { hingeMarks, nameInside, seenFromFront } from './door-marks.ts';
import { builtSizes, doorView, KEPT } from './door-view.ts';
import { drawn } from './drawn.ts';
import { drawnAsBuilt, hornOf, topHornOf } from './horn.ts';

const STEPS = [50, 20, 10, 5, 2, 1];
/** The most that the largest amount may take of the door’s smaller side when it is drawn larger than it is. */
const SHARE = 0.1;

/** How a trim drawing is made: how an amount is read, to 1/64 in or 0.1 mm if not said otherwise, and the hinge side. */
export interface TrimHow {
  readonly reading?: (value: string) => Shown;
  readonly hinge?: Hinge | undefined;
}

/** How a door is drawn that is to be trimmed. */
interface Trimmed {
  readonly width: number;
  readonly height: number;
  readonly horn: number;
  readonly off: TakeOff;
  /** Amounts are drawn so many times as large as they are. */
  readonly times: number;
  readonly read: (value: string) => string;
}

/**
 * The door as built, from the front, its horns on, with the line to trim to: what comes off each edge stands beside it,
 * at both its ends where the opening was surveyed. The amounts are drawn larger than they are, and the drawing says how
 * many times, since a sixteenth on a door is no wider than the line. Where an amount is below zero the line runs outside
 * the door.
 */
export function trimView(door: PlanDoor, units: Units, { reading, hinge }: TrimHow = {}): Drawing {
  const trimmed = trimmedDoor(door, units, reading);
  const { width, height, horn } = trimmed;
  const line = trimLine(trimmed);
  return {
    title: say('drawing.trim', { door: door.door }),
    units,
    shapes: [
      ...hornShapes(door, units, trimmed),
      area(rectangle(0, 0, width, height), 'door-as-built', 'waste'),
      area(polygon(within(line, width, height)), 'stays', 'wood', 'none'),
      ...sightLines(door, units),
      area(polygon(line), 'trim-to', 'none', 'cut'),
      ...hingeMarks(hinge, width, height),
      ...nameInside(door),
      ...seenFromFront(hinge, width, height + horn, 2.4),
      ...notesBelow(door, trimmed),
      ...amounts(trimmed, door.values.survey !== undefined),
      ...builtSizes(door, units, { width, height, horn }, KEPT),
    ],
  };
}

function trimmedDoor(door: PlanDoor, units: Units, reading: TrimHow['reading']): Trimmed {
  const { values } = door;
  const off = values.survey?.takeOff ?? squareOff(door);
  const { width, height } = drawnAsBuilt(values, units);
  const all = [off.left, off.right, off.bottom, off.top].flatMap((ends): string[] =>
    Object.values<string>(ends),
  );
  const most = Math.max(...all.map((each) => Math.abs(drawn(each))));
  return {
    width,
    height,
    horn: hornOf(door),
    off,
    times: STEPS.find((step) => most * step <= Math.min(width, height) * SHARE) ?? 1,
    read: (value) => shownText((reading ?? ((each: string) => showValue(each, units)))(value)),
  };
}

/** Where the door is trimmed to, its corners anticlockwise from the bottom left. */
function trimLine({ width, height, times, off: { left, right, bottom, top } }: Trimmed): Point[] {
  const off = (value: string) => drawn(value) * times;
  return [
    at(off(left.bottom), off(bottom.left)),
    at(width - off(right.bottom), off(bottom.right)),
    at(width - off(right.top), height - off(top.right)),
    at(off(left.top), height - off(top.left)),
  ];
}

/** The four horns that are sawn off first. */
function hornShapes(door: PlanDoor, units: Units, { width, height, horn }: Trimmed): Shape[] {
  const { left, right } = partsOf(door).stiles;
  return [left, right].flatMap((stile) => {
    const x = stile === left ? 0 : width - drawn(right.width);
    const to = x + drawn(stile.width);
    const top = topHornOf(door, stile, units);
    return [
      ...(horn > 0 ? [area(rectangle(x, -horn, to, 0), 'horn', 'waste')] : []),
      ...(top > 0 ? [area(rectangle(x, height, to, height + top), 'horn', 'waste')] : []),
    ];
  });
}

/** Below the door: how many times as large the amounts are drawn, and the horns. */
function notesBelow(door: PlanDoor, { width, horn, times, read }: Trimmed): Label[] {
  const note = (text: string, down: number, role: string) =>
    label(text, at(width / 2, -horn), role, 'small', 'middle', Infinity, { shift: at(0, -down) });
  const sawn = stageOf(door, 'trim')?.settings.horn;
  return [
    note(say('drawing.trim-times', { times }), 2.5, 'times'),
    ...(sawn !== undefined && horn > 0
      ? [note(say('drawing.horns-off', { horn: read(sawn) }), 3.7, 'horns')]
      : []),
  ];
}

/** What comes off each edge, beside it; at both its ends where the opening was surveyed. */
function amounts(trimmed: Trimmed, surveyed: boolean): Label[] {
  return [
    ...(['left', 'right'] as const).flatMap((edge) => amountsBeside(trimmed, edge, surveyed)),
    ...(['bottom', 'top'] as const).flatMap((edge) => amountsOver(trimmed, edge, surveyed)),
  ];
}

/** How far the line runs outside the door there: its amount stands beyond it. */
function outside({ times }: Trimmed, value: string): number {
  return Math.max(0, -drawn(value) * times);
}

function amount(
  { read }: Trimmed,
  value: string,
  where: Point,
  shift: Point,
  anchor: Label['anchor'],
  role: string,
): Label {
  return label(read(value), where, `off-${role}`, 'large', anchor, Infinity, { shift });
}

function amountsBeside(trimmed: Trimmed, edge: 'left' | 'right', surveyed: boolean): Label[] {
  const { width, height, off } = trimmed;
  const ends = off[edge];
  const put = (value: string, share: number, role: string) => {
    const out = outside(trimmed, value);
    return edge === 'left'
      ? amount(trimmed, value, at(-out, height * share), at(-0.7, 0), 'end', role)
      : amount(trimmed, value, at(width + out, height * share), at(0.7, 0), 'start', role);
  };
  return surveyed
    ? [put(ends.bottom, 0.14, `${edge}-bottom`), put(ends.top, 0.86, `${edge}-top`)]
    : [put(ends.bottom, 0.4, edge)];
}

function amountsOver(trimmed: Trimmed, edge: 'bottom' | 'top', surveyed: boolean): Label[] {
  const { width, height, horn, off } = trimmed;
  const ends = off[edge];
  const put = (value: string, x: number, role: string) => {
    const beyond = Math.max(outside(trimmed, value), horn);
    return edge === 'bottom'
      ? amount(trimmed, value, at(x, -beyond), at(0, -1.1), 'middle', role)
      : amount(trimmed, value, at(x, height + beyond), at(0, 1), 'middle', role);
  };
  return surveyed
    ? [put(ends.left, 0, `${edge}-left`), put(ends.right, width, `${edge}-right`)]
    : [put(ends.left, width / 2, edge)];
}

/** What comes off for a square opening: the same all along a side. */
function squareOff({ values }: PlanDoor): TakeOff {
  const { left, right, bottom, top } = trimOf(values);
  const upright = (side: string) => ({ bottom: side, top: side });
  const lying = (end: string) => ({ left: end, right: end });
  return { left: upright(left), right: upright(right), bottom: lying(bottom), top: lying(top) };
}

/** What one sees through the frame, to know the door by: its openings, an arch among them. */
function sightLines(door: PlanDoor, units: Units): Shape[] {
  return doorView(door, units).shapes.filter(
    (shape) => shape.kind === 'area' && (shape.role === 'bead-line' || parsePart(shape.role)?.at === 'mid'),
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
