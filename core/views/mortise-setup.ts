import type { Point, Shape } from '../drawing/model.ts';
import { mirrored } from '../drawing/mirrored.ts';
import { area, at, dimension, label, rectangle } from '../drawing/shapes.ts';
import { moved } from '../outline/moved.ts';
import { placeEnd, type PlaceName } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { placeOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { memberSection } from './section-view.ts';
import { drawnEnd, placed, stileBlank, type StileLie } from './stile-blank.ts';
import { fromEnd, lieFor, stopBlock } from './stile-setups.ts';

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
      ? [area(rectangle(x1, width + width * 0.08, x1 + chisel, width + width * 0.5), 'chisel', 'tool')]
      : []),
    faceAway(lie, end, width),
    fromEnd(part, lie, 'start', chosen.settings.start, width, 'above', 1, own),
    fromEnd(part, lie, 'stop', chosen.settings.stop, width, 'above', 2, own),
    dimension('length', chosen.settings.length, at(x1, 0), at(x2, 0), 'below', 1, own),
    ...endSection(part, stage, end + width * 0.34),
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

/** The back is toward one, at the left stop and at the right: the front runs along the fence. Written below the mortise, clear of the end's name. */
function faceAway(lie: StileLie, end: number, width: number): Shape {
  const named = lie.leftEnd === 'top' ? 0.92 : 1.22;
  const from =
    lie.leftOut === undefined ? width * named : placed(lie, width, lie.leftOut.to + width * 1e-6).x;
  return label(
    say('drawing.back-toward-you'),
    at(end - width * 0.12, width * 0.14),
    'face',
    'normal',
    'end',
    width * 0.26,
    { across: end - width * 0.18 - from },
  );
}

/**
 * The stile from its end, in line with it: the fence behind it, the chisel over its edge and the pocket it makes. The
 * section begins at x, its back toward the one who stands before the mortiser.
 */
function endSection(part: PlanPart, { settings: s }: StageOf<'mortise'>, x: number): Shape[] {
  const profile = profileOf(part);
  const { width, thickness } = profile;
  const chisel = s.chisel === undefined ? 0 : drawn(s.chisel);
  const fence = s.fence === undefined ? (thickness - chisel) / 2 : drawn(s.fence);
  const front = x + thickness;
  const [near, far] = [front - fence, front - fence - chisel];
  const thick = width * 0.2;
  const lie = (point: Point): Point => at(front - point.x, point.y);
  return [
    area(moved(memberSection(profile, { bead: true, groove: true }), lie, true), 'end-section', 'section'),
    area(rectangle(far, width - drawn(s.depthFromEdge), near, width), 'end-pocket', 'waste', 'cut'),
    area(rectangle(front, -width * 0.1, front + thick, width * 1.08), 'fence', 'tool'),
    label(
      say('drawing.front-to-fence'),
      at(front + thick / 2, width * 0.49),
      'fence-name',
      'small',
      'middle',
      width * 0.22,
      {
        across: thick * 0.92,
        mayTurn: true,
      },
    ),
    ...(chisel > 0
      ? [
          area(rectangle(far, width * 1.08, near, width * 1.5), 'chisel-end', 'tool'),
          dimension('chisel', s.chisel ?? chisel, at(far, width * 1.5), at(near, width * 1.5), 'above', 1, {
            keepName: true,
          }),
        ]
      : []),
    ...(s.fence === undefined
      ? []
      : [
          dimension('fence', s.fence, at(front, 0), at(near, 0), 'below', 1, { datum: true, keepName: true }),
        ]),
  ];
}
