import type { FigurePath } from './figure.ts';
import type { Point } from './model.ts';

/** Straight lines from point to point, in the medium's units. */
export function pathThrough([start, ...rest]: readonly [Point, ...Point[]], closed = false): FigurePath {
  return { x: start.x, y: start.y, closed, runs: rest.map(({ x, y }) => ({ kind: 'line', x, y })) };
}

/** The outline of a box, in the medium's units, y down. */
export function boxPath(left: number, top: number, right: number, bottom: number): FigurePath {
  return pathThrough(
    [
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: bottom },
      { x: left, y: bottom },
    ],
    true,
  );
}
