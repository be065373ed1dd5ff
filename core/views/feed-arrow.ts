import type { Path, Point, Shape } from '../drawing/model.ts';
import { area, at, polygon, stroke } from '../drawing/shapes.ts';

/** A straight arrow that says which way a piece is fed; its head is so long, in true size. */
export function feedArrow(from: Point, to: Point, head: number): Shape[] {
  return [area(stroke(from, to), 'feed', 'none', 'edge'), headAt(to, at(to.x - from.x, to.y - from.y), head)];
}

/** An arrow round a centre, anticlockwise from one angle to another, in degrees: which way a cutter turns. */
export function turnArrow(centre: Point, radius: number, from: number, to: number, head: number): Shape[] {
  const end = around(centre, radius, to);
  const path: Path = {
    start: around(centre, radius, from),
    runs: [{ kind: 'arc', to: end, centre, clockwise: false }],
    open: true,
  };
  return [area(path, 'turns', 'none', 'edge'), headAt(end, at(centre.y - end.y, end.x - centre.x), head)];
}

/** A point so far from a centre, at an angle in degrees anticlockwise from the right. */
export function around(centre: Point, radius: number, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return at(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
}

/** A whole circle. */
export function circle(centre: Point, radius: number): Path {
  const [left, right] = [at(centre.x - radius, centre.y), at(centre.x + radius, centre.y)];
  return {
    start: left,
    runs: [
      { kind: 'arc', to: right, centre, clockwise: false },
      { kind: 'arc', to: left, centre, clockwise: false },
    ],
  };
}

/** The head of an arrow: its point a little beyond where the line ends. */
function headAt(end: Point, { x, y }: Point, long: number): Shape {
  const off = Math.hypot(x, y);
  const [ux, uy] = [(x / off) * long, (y / off) * long];
  return area(
    polygon([
      at(end.x + ux * 0.5, end.y + uy * 0.5),
      at(end.x - ux * 0.5 - uy * 0.4, end.y - uy * 0.5 + ux * 0.4),
      at(end.x - ux * 0.5 + uy * 0.4, end.y - uy * 0.5 - ux * 0.4),
    ]),
    'arrow-head',
    'ink',
    'none',
  );
}
