import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, rectangle } from '../drawing/shapes.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';

/** Paring the mortise to the groove's width, looking down on the edge. */
export function pareSetup(part: PlanPart, { settings }: StageOf<'pare'>): Shape[] {
  const { thickness } = profileOf(part);
  const wide = drawn(settings.width);
  const wall = (thickness - wide) / 2;
  const first = stageOf(part, 'mortise')?.places[0]?.settings;
  if (first === undefined) return [];
  const [start, stop] = [drawn(first.start), drawn(first.stop)];
  const end = stop + (stop - start) * 0.6;
  return [
    area(rectangle(0, 0, end, thickness), 'edge', 'wood'),
    area(rectangle(start, wall, stop, wall + wide), 'mortise', 'waste', 'cut'),
    dimension('width', settings.width, at(end, wall), at(end, wall + wide), 'right', 1),
  ];
}
