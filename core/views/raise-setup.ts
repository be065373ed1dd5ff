import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, polygon, rectangle } from '../drawing/shapes.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';

/** Raising the panel from its back, back down: the cutter in the table takes the band below the tongue that stays. */
export function raiseSetup(part: PlanPart, { settings: s }: StageOf<'raise'>): Shape[] {
  const thickness = drawn(part.thickness);
  const [band, depth] = [drawn(s.band), drawn(s.depth)];
  const width = Math.min(drawn(part.width), band * 2.6);
  const inner = width - band;
  return [
    area(
      polygon([
        at(0, 0),
        at(inner, 0),
        at(inner, depth),
        at(width, depth),
        at(width, thickness),
        at(0, thickness),
      ]),
      'section',
      'section',
    ),
    area(rectangle(inner, 0, width, depth), 'waste', 'waste', 'cut'),
    area(rectangle(-thickness * 0.4, -thickness * 0.3, inner, 0), 'table', 'tool'),
    label(say('drawing.table'), at(inner * 0.25, -thickness * 0.15), 'table-name', 'small'),
    area(rectangle(inner, -thickness * 0.5, width + thickness * 0.4, depth), 'cutter', 'none', 'fine'),
    label(say('drawing.cutter'), at((inner + width) / 2, -thickness * 0.3), 'cutter-name', 'small'),
    label(say('drawing.back-down'), at(inner * 0.5, thickness * 0.2), 'face', 'small'),
    dimension('band', s.band, at(width, thickness), at(inner, thickness), 'above', 1, { datum: true }),
    dimension('tongue', s.tongue, at(width, thickness), at(width, depth), 'right', 1),
    dimension('depth', s.depth, at(-thickness * 0.4, 0), at(-thickness * 0.4, depth), 'left', 1, {
      datum: true,
    }),
  ];
}
