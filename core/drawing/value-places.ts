import { type StandingDimension, TICK } from './dimension-line.ts';
import type { Point } from './model.ts';

/** A value that is to be placed: how wide it is set, the height of its type, and what room the figure has for it. */
export interface ValueRoom {
  readonly wide: number;
  readonly text: number;
  /** The figure's width: a value stays whole inside it. */
  readonly width: number;
  /** The right edge of the drawing's own room. */
  readonly right: number;
  readonly place: (point: Point) => Point;
}

/** Where a dimension's value may stand, the best first: on its line where it has room there, else beside its ends or over it. */
export function valuePlaces(dimension: StandingDimension, room: ValueRoom): Point[] {
  const line = freeLine(dimension, room.text);
  const middle = { x: (line[0].x + line[1].x) / 2, y: (line[0].y + line[1].y) / 2 };
  if (dimension.upright) return besideUpright(dimension, middle, room);
  if (dimension.shape.side === 'along') return besideSlanting(dimension, middle, room);
  return onLevel(dimension, middle, Math.abs(line[1].x - line[0].x), room);
}

/** What of the line the value may stand on: of a level one with a break what is beyond it, so that both can be seen. */
function freeLine({ upright, ends, broken }: StandingDimension, text: number): readonly [Point, Point] {
  const [from, to] = ends;
  return broken === undefined || upright ? ends : [{ x: broken.x + text, y: from.y }, to];
}

/** The nearest middle at which a value is whole inside the figure. */
function inside(x: number, { wide, width }: ValueRoom): number {
  return Math.max(wide / 2 + 2, Math.min(width - wide / 2 - 2, x));
}

/** Its base line so that it stands on a height, or so many heights of the type over it. */
function at(x: number, y: number, text: number, up = 0): Point {
  return { x, y: y + text * (0.35 - up) };
}

function besideUpright({ shape }: StandingDimension, middle: Point, room: ValueRoom): Point[] {
  const { wide, text } = room;
  const side = shape.side === 'left' ? -1 : 1;
  const beside = inside(middle.x + side * (wide / 2 + text * 0.45), room);
  return [0, 0.5, -0.5, 1, -1, 1.5, -1.5].map((up) => at(beside, middle.y, text, up));
}

/** From its own place inwards to the middle of the line, then at the sides of the drawing. */
function besideSlanting({ shape }: StandingDimension, middle: Point, room: ValueRoom): Point[] {
  const { wide, text, right, place } = room;
  const off = wide / 2 + text * TICK * 3;
  const own =
    shape.valueAt === undefined
      ? { x: middle.x + wide / 2 + text * 0.5, y: middle.y + text * 0.9 }
      : place(shape.valueAt);
  const inwards = [0, 0.25, 0.4, 0.55].map((share) => ({
    x: own.x + (middle.x - own.x) * share,
    y: own.y + (middle.y - own.y) * share,
  }));
  const aside = [
    { x: middle.x, y: own.y },
    { x: right + off, y: own.y },
    { x: right + off + text, y: own.y },
    { x: middle.x - wide / 2 - text * 0.5, y: middle.y + text * 0.9 },
  ];
  return [...inwards, ...aside].map(({ x, y }) => at(inside(x, room), y, text));
}

/** On the line if it is long enough, beside either end of it, then on its outer side. */
function onLevel({ shape, ends }: StandingDimension, middle: Point, long: number, room: ValueRoom): Point[] {
  const { wide, text } = room;
  const tick = text * TICK;
  const off = wide / 2 + tick * 3;
  const [left, right] = [Math.min(ends[0].x, ends[1].x) - off, Math.max(ends[0].x, ends[1].x) + off];
  const out = (shape.side === 'below' ? -1 : 1) * 0.95;
  const within = (x: number, up?: number) => at(inside(x, room), middle.y, text, up);
  return [
    ...(wide + tick * 4 <= long ? [within(middle.x)] : []),
    ...[right, left].filter((x) => inside(x, room) === x).map((x) => within(x)),
    within(middle.x, out),
    within(right, out),
    within(left, out),
    within(right),
  ];
}
