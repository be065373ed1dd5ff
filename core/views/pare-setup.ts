import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, rectangle, stroke } from '../drawing/shapes.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { member } from './stile-blank.ts';

/**
 * Paring the mortises to the groove's width, looking down on the sight edge, the bottom end at the left: a left stile's
 * front is then away from one. What the chisel left between it and the groove's walls comes off, level with them.
 */
export function pareSetup(part: PlanPart, { settings }: StageOf<'pare'>): Shape[] {
  const { thickness, width: across } = profileOf(part);
  const wide = drawn(settings.width);
  const wall = (thickness - wide) / 2;
  const mortise = stageOf(part, 'mortise');
  const first = mortise?.places[0]?.settings;
  if (mortise === undefined || first === undefined) return [];
  const chisel =
    mortise.settings.chisel === undefined ? wide : Math.min(wide, drawn(mortise.settings.chisel));
  const [start, stop] = [drawn(first.start), drawn(first.stop)];
  const end = stop + across * 0.9;
  const left = (wide - chisel) / 2;
  const frontAbove = readPart(part).at === 'left';
  const face = (above: boolean) =>
    label(
      say(above === frontAbove ? 'drawing.front' : 'drawing.back'),
      at((start + stop) / 2, thickness * (above ? 0.86 : 0.14)),
      'face',
      'small',
    );
  return [
    area(member(0, end, thickness, { left: false, right: true }), 'outline', 'wood'),
    ...[wall, wall + wide].map((y) => area(stroke(at(0, y), at(end, y)), 'groove-wall', 'none', 'fine')),
    area(rectangle(start, wall + left, stop, wall + wide - left), 'mortise', 'paper'),
    ...(left > 0
      ? [wall, wall + wide - left].map((y) =>
          area(rectangle(start, y, stop, y + left), 'waste', 'waste', 'none'),
        )
      : []),
    ...[wall, wall + wide].map((y) =>
      area(stroke(at(start, y), at(stop, y)), 'finished-line', 'none', 'cut'),
    ),
    label(say('drawing.bottom'), at(start * 0.5, thickness / 2), 'end-name', 'large', 'middle', Infinity, {
      across: start * 0.94,
      ground: true,
    }),
    face(true),
    face(false),
    label(
      say('drawing.level-with-groove'),
      at(stop + across * 0.42, thickness * 0.86),
      'line-name',
      'small',
      'middle',
      Infinity,
      {
        across: across * 0.8,
      },
    ),
    label(
      say('drawing.each-mortise'),
      at((start + stop) / 2, thickness / 2),
      'each',
      'small',
      'middle',
      wide - 2 * left,
      {
        across: stop - start,
      },
    ),
    dimension('width', settings.width, at(end, wall), at(end, wall + wide), 'right', 1),
  ];
}
