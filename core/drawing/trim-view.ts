import { type Shown, shownText, showValue } from '../length/shown.ts';
import type { PlanDoor, Units } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import { doorView } from './door-view.ts';
import type { Drawing, Label, Point, Shape } from './model.ts';
import { drawn } from './plan-number.ts';
import { area, at, label, polygon, rectangle } from './shapes.ts';

const STEPS = [50, 20, 10, 5, 2, 1];
/** The most that the largest amount may take of the door’s smaller side when it is drawn larger than it is. */
const SHARE = 0.1;

/**
 * The door as built, from the front, with the line to trim to: what comes off each edge at both its ends stands beside that
 * end. The amounts are drawn larger than they are, and the drawing says how many times, since a sixteenth on a door is
 * no wider than the line. Where an amount is below zero the line runs outside the door. `reading`: how an amount is read,
 * to 1/64 in or 0.1 mm if not said otherwise. Null without a survey.
 */
export function trimView(
  door: PlanDoor,
  units: Units,
  reading: (value: string) => Shown = (value) => showValue(value, units),
): Drawing | null {
  const { values } = door;
  if (values.survey === undefined) return null;
  const { left, right, bottom, top } = values.survey.takeOff;
  const width = drawn(values.finishedWidth) + 2 * drawn(values.trimEachSide);
  const height = drawn(values.finishedHeight) + 2 * drawn(values.trimEachEnd);
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
  const far = small * 0.03;
  const [low, high] = [height * 0.14, height * 0.86];
  const amount = (value: string, where: Point, anchor: Label['anchor'], role: string): Label =>
    label(shownText(reading(value)), where, `off-${role}`, 'large', anchor);
  return {
    title: say('drawing.trim', { door: door.door }),
    units,
    shapes: [
      area(rectangle(0, 0, width, height), 'door-as-built', 'waste'),
      area(polygon(within(line, width, height)), 'stays', 'wood', 'none'),
      ...sightLines(door, units),
      area(polygon(line), 'trim-to', 'none', 'cut'),
      label(door.door, at(width / 2, height / 2), 'door-name', 'large'),
      label(say('drawing.trim-times', { times }), at(width / 2, -far * 7), 'times', 'small'),
      amount(left.bottom, at(-far - out(left.bottom), low), 'end', 'left-bottom'),
      amount(left.top, at(-far - out(left.top), high), 'end', 'left-top'),
      amount(right.bottom, at(width + far + out(right.bottom), low), 'start', 'right-bottom'),
      amount(right.top, at(width + far + out(right.top), high), 'start', 'right-top'),
      amount(bottom.left, at(width * 0.14, -far * 3), 'middle', 'bottom-left'),
      amount(bottom.right, at(width * 0.86, -far * 3), 'middle', 'bottom-right'),
      amount(top.left, at(width * 0.14, height + far * 1.3), 'middle', 'top-left'),
      amount(top.right, at(width * 0.86, height + far * 1.3), 'middle', 'top-right'),
    ],
  };
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
