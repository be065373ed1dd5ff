import type { PlanPart } from '../plan/plan.ts';
import type { Path } from './model.ts';
import { drawn, stageOf } from './plan-number.ts';
import { at, rectangle } from './shapes.ts';

/** A panel as seen from the front, bottom left corner at the origin: square, or with its arched head. */
export function panelOutline(part: PlanPart): Path {
  const width = drawn(part.width);
  const cutout = stageOf(part, 'cutout')?.settings;
  if (cutout === undefined) return rectangle(0, 0, width, drawn(part.length));
  const side = drawn(cutout.sideHeight);
  const flat = drawn(cutout.flat);
  const centre = at(width / 2, side + drawn(cutout.rise) - drawn(cutout.radius));
  return {
    start: at(0, 0),
    runs: [
      { kind: 'line', to: at(width, 0) },
      { kind: 'line', to: at(width, side) },
      { kind: 'line', to: at(width - flat, side) },
      { kind: 'arc', to: at(flat, side), centre, clockwise: false },
      { kind: 'line', to: at(0, side) },
    ],
  };
}
