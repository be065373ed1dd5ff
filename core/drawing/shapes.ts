import type { Area, Dimension, Fill, Label, Path, Pen, Point, Run, Symbol } from './model.ts';

/** A point: x to the right, y up, in the job’s units. */
export function at(x: number, y: number): Point {
  return { x, y };
}

/** A closed outline through these corners. */
export function polygon(points: readonly Point[]): Path {
  const [start = at(0, 0), ...rest] = points;
  return { start, runs: rest.map((to): Run => ({ kind: 'line', to })) };
}

/** A rectangle between two corners, from the first one anticlockwise where the second lies right of and above it. */
export function rectangle(x1: number, y1: number, x2: number, y2: number): Path {
  return polygon([at(x1, y1), at(x2, y1), at(x2, y2), at(x1, y2)]);
}

/** A single straight line. */
export function stroke(from: Point, to: Point): Path {
  return { start: from, runs: [{ kind: 'line', to }], open: true };
}

/** A path to draw; its role is what it is, for tests and assistive tools. */
export function area(path: Path, role: string, fill: Fill = 'none', pen: Pen = 'edge', place?: string): Area {
  return { kind: 'area', path, role, fill, pen, ...(place === undefined ? {} : { place }) };
}

/** Words at a point; `within` is the true height that they have to stand in, `more` the width and a white ground. */
export function label(
  text: string,
  where: Point,
  role: string,
  size: Label['size'] = 'normal',
  anchor: Label['anchor'] = 'middle',
  within?: number,
  more: Pick<Label, 'across' | 'ground' | 'shift' | 'mayTurn'> = {},
): Label {
  return {
    kind: 'label',
    text,
    at: where,
    role,
    size,
    anchor,
    ...(within === undefined ? {} : { within }),
    ...more,
  };
}

/** A sign of fixed size at a point. */
export function symbol(which: Symbol['symbol'], where: Point, role: string): Symbol {
  return { kind: 'symbol', symbol: which, at: where, role };
}

/** A dimension of a printed value; its row counts outwards from the drawing. */
export function dimension(
  name: string,
  value: string | number,
  from: Point,
  to: Point,
  side: Dimension['side'],
  row: number,
  more: Pick<Dimension, 'place' | 'datum' | 'brokenAt' | 'valueAt' | 'keepName'> = {},
): Dimension {
  return { kind: 'dimension', name, value, from, to, side, row, ...more };
}
