import { distance, type Point } from './outline.ts';

/** What an edge lies on: a straight line through a point in a direction of length 1, or a circle. */
export type Carrier =
  | { readonly kind: 'line'; readonly through: Point; readonly along: Point }
  | { readonly kind: 'circle'; readonly centre: Point; readonly radius: number };

/** Carriers that touch meet in one point; so near to touching, relative to their size, what doubles lose is taken for it. */
const TOUCH = 1e-9;

/** Where two carriers meet, the point nearest to a given one; null where they do not meet at all. */
export function meet(one: Carrier, other: Carrier, near: Point): Point | null {
  const points =
    one.kind === 'line'
      ? other.kind === 'line'
        ? lineWithLine(one, other, near)
        : lineWithCircle(one, other)
      : other.kind === 'line'
        ? lineWithCircle(other, one)
        : circleWithCircle(one, other, near);
  return points.reduce<Point | null>(
    (best, each) => (best === null || distance(each, near) < distance(best, near) ? each : best),
    null,
  );
}

type Line = Extract<Carrier, { kind: 'line' }>;
type Circle = Extract<Carrier, { kind: 'circle' }>;

function cross(p: Point, q: Point): number {
  return p.x * q.y - p.y * q.x;
}

function from(p: Point, q: Point): Point {
  return { x: q.x - p.x, y: q.y - p.y };
}

/** The point of a line that is nearest to another. */
function foot({ through, along }: Line, point: Point): Point {
  const gap = from(through, point);
  const t = gap.x * along.x + gap.y * along.y;
  return { x: through.x + along.x * t, y: through.y + along.y * t };
}

function lineWithLine(one: Line, other: Line, near: Point): Point[] {
  const lean = cross(one.along, other.along);
  if (Math.abs(lean) > TOUCH) {
    const t = cross(from(one.through, other.through), other.along) / lean;
    return [{ x: one.through.x + one.along.x * t, y: one.through.y + one.along.y * t }];
  }
  const point = foot(one, near);
  return distance(point, foot(other, point)) <= TOUCH * (1 + distance(one.through, other.through))
    ? [point]
    : [];
}

function lineWithCircle(line: Line, { centre, radius }: Circle): Point[] {
  const nearest = foot(line, centre);
  const square = radius ** 2 - distance(centre, nearest) ** 2;
  if (square < -TOUCH * radius ** 2) return [];
  const half = Math.sqrt(Math.max(0, square));
  return [half, -half].map((t) => ({ x: nearest.x + line.along.x * t, y: nearest.y + line.along.y * t }));
}

function circleWithCircle(one: Circle, other: Circle, near: Point): Point[] {
  const apart = distance(one.centre, other.centre);
  if (apart <= TOUCH * one.radius) {
    const out = distance(one.centre, near);
    if (Math.abs(one.radius - other.radius) > TOUCH * one.radius || out === 0) return [];
    const gap = from(one.centre, near);
    return [{ x: one.centre.x + (gap.x / out) * one.radius, y: one.centre.y + (gap.y / out) * one.radius }];
  }
  const gap = from(one.centre, other.centre);
  const along = (apart ** 2 + one.radius ** 2 - other.radius ** 2) / (2 * apart);
  return lineWithCircle(
    {
      kind: 'line',
      through: { x: one.centre.x + (gap.x / apart) * along, y: one.centre.y + (gap.y / apart) * along },
      along: { x: -gap.y / apart, y: gap.x / apart },
    },
    one,
  );
}
