import type { Shape } from '../drawing/model.ts';
import { area, at, dimension, label, rectangle, stroke } from '../drawing/shapes.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { type RailEdge, shoulderOf, sightEdges, tenonWaste } from './rail-blank.ts';
import { member } from './stile-blank.ts';
import { blade, stopBlock, tableUnder } from './stile-setups.ts';

/** The edges of a rail that lies bead edge down, as it is machined, the bottom rail turned over. A mid rail has a bead on both. */
function beadDown(part: PlanPart): readonly RailEdge[] {
  return sightEdges(part).length === 2 ? sightEdges(part) : ['below'];
}

/** One end of a rail against the stop, the rest broken off. */
function railEnd(part: PlanPart, upTo: number): Shape[] {
  const { width } = profileOf(part);
  return [area(member(0, upTo, width, { left: false, right: true }), 'outline', 'wood'), ...stopBlock(width)];
}

/** How long a stop block is drawn, in widths of the rail. */
const BLOCK = 0.25;

/** How much of a rail's end is drawn. */
export function endReach(part: PlanPart): number {
  const { length, width } = profileOf(part);
  return Math.min(length / 2, Math.max(width * 1.4, shoulderOf(part) * 2.4));
}

/** Shoulders: face down, rail's end against the stop; the blade's side away from the stop cuts the line. */
export function shoulderSetup(part: PlanPart, stage: StageOf<'shoulder'>): Shape[] {
  const { width } = profileOf(part);
  const stop = drawn(stage.settings.stop);
  const reach = endReach(part);
  return [
    ...railEnd(part, reach),
    area(rectangle(stop - KERF * width, -width * 0.2, stop, width * 1.05), 'blade', 'tool', 'fine'),
    label(say('drawing.blade'), at(stop - KERF * width, -width * 0.12), 'blade-name', 'small', 'end'),
    area(rectangle(0, 0, stop, width), 'tenon-face', 'none', 'hidden'),
    area(stroke(at(stop, 0), at(stop, width)), 'shoulder', 'none', 'cut'),
    label(
      say('drawing.both-faces'),
      at((stop + reach) / 2, width * 0.5),
      'both',
      'small',
      'middle',
      width * 0.3,
    ),
    dimension('stop', stage.settings.stop, at(0, width), at(stop, width), 'above', 1, { datum: true }),
  ];
}

/** How wide the blade is drawn, in widths of the rail: no setting of it is known here. */
const KERF = 0.05;

/** The tenon's edges, bead edge down: each with its own stop and height; what is hatched comes off. */
export function tenonSetup(part: PlanPart, stage: StageOf<'tenon'>): Shape[] {
  const { width } = profileOf(part);
  const s = stage.settings;
  const reach = endReach(part);
  const innerHeight = drawn(s.innerHeight);
  const mid = s.outerHeight === undefined || s.outerStop === undefined;
  const shoulder = shoulderOf(part);
  return [
    ...railEnd(part, reach),
    ...tenonWaste(part, 'left', beadDown(part)).map((waste) => area(waste, 'tenon-waste', 'waste', 'cut')),
    area(stroke(at(shoulder, 0), at(shoulder, width)), 'shoulder', 'none', 'edge'),
    label(say('drawing.bead-edge'), at(reach * 0.96, width * 0.1), 'edge-name', 'small', 'end'),
    label(
      say(mid ? 'drawing.bead-edge' : 'drawing.outer-edge'),
      at(reach * 0.96, width * 0.9),
      'edge-name',
      'small',
      'end',
    ),
    ...allEnds(part, (shoulder + reach) / 2),
    dimension('innerStop', s.innerStop, at(0, 0), at(drawn(s.innerStop), 0), 'below', 1, KEPT),
    dimension('innerHeight', s.innerHeight, at(reach, 0), at(reach, innerHeight), 'right', 1, KEPT),
    ...(s.outerStop === undefined || s.outerHeight === undefined
      ? []
      : [
          dimension('outerStop', s.outerStop, at(0, width), at(drawn(s.outerStop), width), 'above', 1, KEPT),
          dimension(
            'outerHeight',
            s.outerHeight,
            at(reach, width),
            at(reach, width - drawn(s.outerHeight)),
            'right',
            1,
            KEPT,
          ),
        ]),
    dimension('width', s.width, at(0, innerHeight), at(0, innerHeight + drawn(s.width)), 'left', 1, {
      keepName: true,
    }),
  ];
}

/** Measured from its datum, its name beside it however narrow the drawing is. */
const KEPT = { datum: true, keepName: true } as const;

/** How often it is done: at both ends, and on a mid rail on both of its edges. */
function allEnds(part: PlanPart, x: number): Shape[] {
  const { width } = profileOf(part);
  const key = sightEdges(part).length === 2 ? 'drawing.both-edges-ends' : 'drawing.both-ends';
  return [label(say(key), at(x, width * 0.5), 'both', 'small', 'middle', width * 0.3)];
}

/** The rail's mitre: its end against the stop, bead edge down. Both ends alike, and on a mid rail both edges. */
export function railMitreSetup(part: PlanPart, stage: StageOf<'mitre'>): Shape[] {
  const { width, bead } = profileOf(part);
  const s = stage.settings;
  const [sight, shoulder] = [drawn(s.sightEdge), drawn(s.shoulderLine)];
  const reach = endReach(part);
  const other =
    sightEdges(part).length < 2
      ? []
      : [
          area(stroke(at(0, width - bead), at(reach, width - bead)), 'bead-line', 'none', 'fine'),
          area(stroke(at(shoulder, width - bead), at(sight, width)), 'mitre-other-edge', 'none', 'hidden'),
          label(say('drawing.bead-edge'), at(reach * 0.96, width * 0.9), 'edge-name', 'small', 'end'),
        ];
  return [
    ...railEnd(part, reach),
    ...tableUnder(width, reach, BLOCK),
    area(stroke(at(0, bead), at(reach, bead)), 'bead-line', 'none', 'fine'),
    ...other,
    ...blade(sight, shoulder, bead, width),
    area(stroke(at(shoulder, bead), at(sight, 0)), 'mitre', 'none', 'cut'),
    label(
      say('drawing.bead-edge'),
      at(reach * 0.96, Math.max(width * 0.1, bead * 1.6)),
      'edge-name',
      'small',
      'end',
    ),
    ...allEnds(part, (sight + reach) / 2),
    dimension('shoulderLine', s.shoulderLine, at(0, width), at(shoulder, bead), 'above', 1, {
      datum: true,
    }),
    dimension('sightEdge', s.sightEdge, at(0, 0), at(sight, 0), 'below', 1, { datum: true }),
    dimension('height', s.height, at(reach, 0), at(reach, bead), 'right', 1, { datum: true }),
  ];
}

/**
 * The tenon's cheeks: the rail lies face down on the table, seen from its edge, and is crosscut side by side from the
 * shoulder to the end; then the same on the other face, and at the other end.
 */
export function cheekSetup(part: PlanPart, stage: StageOf<'cheek'>): Shape[] {
  const { thickness } = profileOf(part);
  const s = stage.settings;
  const [wall, thick] = [drawn(s.height), drawn(s.thickness)];
  const shoulder = stageOf(part, 'shoulder')?.settings;
  const tenon = shoulderOf(part);
  const reach = Math.max(tenon * 2.4, tenon + thickness * 2);
  const table = -thickness * 0.28;
  const kerf = Math.min(tenon * 0.3, thickness * 0.25);
  return [
    area(rectangle(-thickness * 0.6, 0, reach, thickness * 1.5), 'gauge', 'tool', 'fine'),
    label(say('drawing.gauge'), at(reach * 0.96, thickness * 1.26), 'gauge-name', 'small', 'end'),
    area(member(0, reach, thickness, { left: false, right: true }), 'side', 'wood'),
    area(rectangle(0, thickness - wall, tenon, thickness), 'waste-above', 'waste', 'hidden'),
    area(rectangle(0, 0, tenon, wall), 'waste', 'waste', 'cut'),
    area(rectangle(-thickness * 0.6, table, reach, 0), 'table', 'tool'),
    label(say('drawing.table'), at(reach * 0.96, table / 2), 'table-name', 'small', 'end'),
    area(rectangle(tenon - kerf, table * 1.9, tenon, wall), 'blade', 'tool'),
    label(say('drawing.blade'), at(tenon + thickness * 0.08, table * 1.5), 'blade-name', 'small', 'start'),
    label(say('drawing.tenon'), at(tenon * 0.08, thickness / 2), 'tenon-name', 'small', 'start', thick * 0.9),
    label(say('drawing.both-faces'), at((tenon + reach) / 2, thickness * 0.5), 'both', 'small'),
    ...(shoulder === undefined
      ? []
      : [
          dimension('tenonLength', shoulder.stop, at(0, thickness), at(tenon, thickness), 'above', 1, {
            datum: true,
          }),
        ]),
    dimension('height', s.height, at(reach, 0), at(reach, wall), 'right', 1, { datum: true }),
    dimension('thickness', s.thickness, at(0, wall), at(0, wall + thick), 'left', 1),
  ];
}
