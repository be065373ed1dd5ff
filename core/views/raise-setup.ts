import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, polygon, rectangle } from '../drawing/shapes.ts';
import type { Units } from '../length/units.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { isShortPart } from '../plan/short-part.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { fromAbove } from './router-above.ts';
import { raisingCutter } from './router-cutter.ts';
import { carrierOver, routerTable } from './router-table.ts';
import type { Sets } from './sets.ts';

/**
 * Raising the panel from its back, back down: the cutter in the table takes the band below the tongue that stays. Along
 * the fence; a panel with an arched head round the bearing, in a carrier, as a short one is along the fence.
 */
export function raiseSetup(
  part: PlanPart,
  { settings: s }: StageOf<'raise'>,
  _place: PlaceName | undefined,
  _sets: Sets,
  units: Units,
): Shape[] {
  const thickness = drawn(part.thickness);
  const [band, depth] = [drawn(s.band), drawn(s.depth)];
  const width = Math.min(drawn(part.width), band * 2.1);
  const inner = width - band;
  const place = { edge: width, thickness, unit: Math.max(thickness, band * 0.6) };
  const cutter = raisingCutter(place, band, depth);
  const arched = stageOf(part, 'cutout') !== undefined;
  const carried = arched || isShortPart(part, units);
  return [
    ...routerTable(place, cutter, arched ? 'pin' : 'fence'),
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
    ...(carried ? carrierOver(place, 0, inner - place.unit * 0.1) : []),
    label(say('drawing.back-down'), at(inner * 0.5, thickness * 0.5), 'face', 'normal', 'middle', Infinity, {
      ground: true,
      across: inner * 0.92,
    }),
    ...fromAbove(place, cutter, arched ? 'round' : 'straight', carried, ({ x, across, low, high }) => [
      label(say('drawing.all-edges'), at(x, low + high * 0.7), 'edges', 'normal', 'middle', high * 0.36, {
        across,
      }),
      label(say('drawing.ends-first'), at(x, low + high * 0.28), 'edges-note', 'small', 'middle', Infinity, {
        across,
      }),
    ]),
    dimension('band', s.band, at(width, thickness), at(inner, depth), 'above', 1, { datum: true }),
    dimension('tongue', s.tongue, at(width, thickness), at(width, depth), 'right', 1),
    dimension('depth', s.depth, at(0, 0), at(inner, depth), 'left', 1, { datum: true }),
  ];
}
