import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, polygon, rectangle } from '../drawing/shapes.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { shoulderOf } from './rail-blank.ts';
import { endReach } from './rail-setups.ts';

/** The haunch that stays beside the tenon, bead edge down. */
export function haunchSetup(part: PlanPart, stage: StageOf<'haunch'>): Shape[] {
  const { width } = profileOf(part);
  const shoulder = shoulderOf(part);
  const [long, high] = [drawn(stage.settings.length), drawn(stage.settings.height)];
  const reach = endReach(part);
  const tenon = stageOf(part, 'tenon')?.settings;
  const inner = tenon === undefined ? 0 : drawn(tenon.innerHeight);
  const outer = tenon?.outerHeight === undefined ? 0 : drawn(tenon.outerHeight);
  return [
    area(polygon([at(shoulder, 0), at(reach, 0), at(reach, width), at(shoulder, width)]), 'outline', 'wood'),
    area(rectangle(0, inner, shoulder, width - outer), 'tenon', 'wood'),
    ...(long > 0
      ? [area(rectangle(shoulder - long, width - high, shoulder, width), 'haunch', 'wood', 'cut')]
      : []),
    label(say('drawing.bead-edge'), at(reach * 0.8, width * 0.15), 'edge-name', 'small'),
    dimension('length', stage.settings.length, at(shoulder, width), at(shoulder - long, width), 'above', 1, {
      datum: true,
    }),
    dimension('height', stage.settings.height, at(0, width), at(0, width - high), 'left', 1, {
      datum: true,
    }),
  ];
}
