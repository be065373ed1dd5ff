import type { Area, Path, Point, Shape } from '#core/drawing/model.ts';

/** An arc is looked at in so many straight pieces. */
const PIECES = 96;

/** A path's corners, its arcs in short straight pieces. */
export function flat({ start, runs }: Path): Point[] {
  let from = start;
  return [
    start,
    ...runs.flatMap((run): Point[] => {
      const begin = from;
      from = run.to;
      if (run.kind === 'line') return [run.to];
      const { centre, clockwise } = run;
      const angle = ({ x, y }: Point) => Math.atan2(y - centre.y, x - centre.x);
      const first = angle(begin);
      let turn = angle(run.to) - first;
      if (clockwise && turn >= 0) turn -= 2 * Math.PI;
      if (!clockwise && turn <= 0) turn += 2 * Math.PI;
      const radius = Math.hypot(begin.x - centre.x, begin.y - centre.y);
      return Array.from({ length: PIECES }, (_, k) => {
        const now = first + (turn * (k + 1)) / PIECES;
        return { x: centre.x + radius * Math.cos(now), y: centre.y + radius * Math.sin(now) };
      });
    }),
  ];
}

/** Straight pieces between corners, from the last back to the first. */
function sides(corners: readonly Point[]): (readonly [Point, Point])[] {
  return corners.map((from, k) => [from, corners[(k + 1) % corners.length] ?? from] as const);
}

/** Does a point lie inside a closed run of corners? By how often a line to the right meets it. */
export function isInside({ x, y }: Point, corners: readonly Point[]): boolean {
  return sides(corners).reduce(
    (inside, [p, q]) =>
      p.y > y !== q.y > y && x < p.x + ((q.x - p.x) * (y - p.y)) / (q.y - p.y) ? !inside : inside,
    false,
  );
}

/** How far a point is from the nearest piece of a closed run of corners. */
export function distanceTo({ x, y }: Point, corners: readonly Point[]): number {
  return Math.min(
    ...sides(corners).map(([p, q]) => {
      const [dx, dy] = [q.x - p.x, q.y - p.y];
      const long = dx * dx + dy * dy;
      const share = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - p.x) * dx + (y - p.y) * dy) / long));
      return Math.hypot(x - p.x - share * dx, y - p.y - share * dy);
    }),
  );
}

/** The areas of a drawing that are called so. */
export function areasOf(shapes: readonly Shape[], role: RegExp): Area[] {
  return shapes.filter((shape): shape is Area => shape.kind === 'area' && role.test(shape.role));
}
