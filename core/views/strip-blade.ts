import type { Path, Point } from '../drawing/model.ts';
import { at } from '../drawing/shapes.ts';

/** The rim of a blade, seen from its side. */
export interface Rim {
  readonly centre: Point;
  readonly radius: number;
}

/** What of the blade stands above the table, from its front at table level back to where the drawing ends. */
export function bladeAbove({ centre, radius }: Rim, left: number, table: number, front: number): Path {
  const back = Math.max(left, 2 * centre.x - front);
  const over = centre.y + Math.sqrt(Math.max(0, radius * radius - (back - centre.x) ** 2));
  return {
    start: at(front, table),
    runs: [
      { kind: 'arc', to: at(back, over), centre, clockwise: false },
      { kind: 'line', to: at(back, table) },
    ],
  };
}

/** What stands between the blade's rim and the mark: cut below, uncut above. */
export function uncutSide({ centre }: Rim, run: number, table: number, top: number, lag: number): Path {
  return {
    start: at(run, table),
    runs: [
      { kind: 'line', to: at(run, top) },
      { kind: 'line', to: at(run - lag, top) },
      { kind: 'arc', to: at(run, table), centre, clockwise: true },
    ],
  };
}
