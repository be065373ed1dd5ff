import type { Outline } from '../outline/outline.ts';
import type { PlanPart } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Path, Shape } from '../drawing/model.ts';
import { drawn, stageOf } from './plan-number.ts';
import { area, at, label, rectangle, symbol } from '../drawing/shapes.ts';

/** A panel as seen from the front, bottom left corner at the origin: square, or with its arched head as its plan has it. */
export function panelOutline(part: PlanPart): Outline {
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

/** What is sawn of a panel's outline: its head, from one side to the other over the flats and the arc. Nothing of a square one. */
export function panelHead(part: PlanPart): Path {
  const { start, runs } = panelOutline(part);
  const [, side, ...head] = runs;
  return { start: side?.to ?? start, runs: head, open: true };
}

/** A panel from the front, with its top end named. */
export function panelFront(part: PlanPart): Shape[] {
  const [width, height] = [drawn(part.width), drawn(part.length)];
  return [
    area(panelOutline(part), 'outline', 'wood'),
    label(say('drawing.top'), at(width / 2, height * 0.7), 'end-name', 'large'),
    symbol('arrow-up', at(width / 2, height * 0.6), 'top'),
  ];
}
