import type { Path, Shape } from '../drawing/model.ts';
import { area, at, label, rectangle, symbol } from '../drawing/shapes.ts';
import { openingOutline } from '../outline/opening-outline.ts';
import type { Outline } from '../outline/outline.ts';
import type { PlanPart } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';

/**
 * A panel as seen from the front, bottom left corner at the origin: square, or with its head as its plan has it, which is
 * an offset of the rail’s.
 */
export function panelOutline(part: PlanPart): Outline {
  const width = drawn(part.width);
  const cutout = stageOf(part, 'cutout')?.settings;
  if (cutout === undefined) return rectangle(0, 0, width, drawn(part.length));
  const { start, runs } = openingOutline(width, drawn(cutout.sideHeight), {
    chord: drawn(cutout.chord),
    rise: drawn(cutout.rise),
    pivot: drawn(cutout.pivot),
    flat: drawn(cutout.flat),
  });
  return { start, runs: runs.slice(0, -1) };
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
