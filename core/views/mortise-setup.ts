import type { Shape } from '../drawing/model.ts';
import { mirrored } from '../drawing/mirrored.ts';
import { area, at, dimension, label, rectangle } from '../drawing/shapes.ts';
import { placeEnd, type PlaceName } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { placeOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { drawnEnd, placed, stileBlank } from './stile-blank.ts';
import { faceNote, fromEnd, lieFor, stopBlock } from './stile-setups.ts';

/**
 * At the mortiser: outer edge down, bead edge up under the chisel, front away from one, one place at a time; its own end
 * against the stop that the plan names.
 */
export function mortiseSetup(part: PlanPart, stage: StageOf<'mortise'>, place?: PlaceName): Shape[] {
  const chosen = placeOf(stage, place);
  if (chosen === undefined) return [];
  const { width } = profileOf(part);
  const leftEnd = placeEnd(chosen.at);
  const [start, stop, depth] = [
    drawn(chosen.settings.start),
    drawn(chosen.settings.stop),
    drawn(stage.settings.depthFromEdge),
  ];
  const lie = lieFor(part, { leftEnd, above: 'bead' }, start, stop);
  const [x1, x2, end] = [placed(lie, width, start).x, placed(lie, width, stop).x, drawnEnd(part, lie)];
  const bottom = width - depth;
  const groove = width - drawn(stage.settings.depthFromEdge) + drawn(stage.settings.depthFromGroove);
  const chisel = stage.settings.chisel === undefined ? 0 : drawn(stage.settings.chisel);
  const own = { place: chosen.at };
  const atRight = chosen.settings.endStop === 'right';
  const shapes = [
    ...stileBlank(part, lie, chosen.at),
    ...stopBlock(width),
    ...(chisel > 0
      ? [
          area(rectangle(x1, width + width * 0.08, x1 + chisel, width + width * 0.5), 'chisel', 'tool'),
          label(
            say('drawing.chisel'),
            at(x1 + chisel + width * 0.06, width * 1.3),
            'chisel-name',
            'small',
            'start',
          ),
        ]
      : []),
    ...faceNote(part, lie, atRight),
    fromEnd(part, lie, 'start', chosen.settings.start, width, 'above', 1, own),
    fromEnd(part, lie, 'stop', chosen.settings.stop, width, 'above', 2, own),
    dimension('length', chosen.settings.length, at(x1, 0), at(x2, 0), 'below', 1, own),
    dimension('depthFromEdge', stage.settings.depthFromEdge, at(end, width), at(end, bottom), 'right', 1, {
      datum: true,
    }),
    dimension(
      'depthFromGroove',
      stage.settings.depthFromGroove,
      at(end, groove),
      at(end, bottom),
      'right',
      2,
      { datum: true },
    ),
  ];
  return atRight ? shapes.map(mirrored) : shapes;
}
