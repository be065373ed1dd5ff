import type { PlanPart, PlanStage } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Point, Shape } from '../drawing/model.ts';
import { drawn, profileOf, stageOf } from './plan-number.ts';
import { railFront, railOutline, sightEdges, tenonWaste } from './rail-blank.ts';
import { area, at, dimension, label, polygon, rectangle, stroke, symbol } from '../drawing/shapes.ts';
import { member } from './stile-blank.ts';
import { blade, stopBlock, tableUnder } from './stile-setups.ts';

/** The arch on the rail, sawn and sanded about the same pivot. The sight edge of the flats is at y = 0. */
export function archSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { length, width } = profileOf(part);
  const arch = stageOf(part, 'arch')?.settings ?? stage.settings;
  const [springing, rise, radius] = [drawn(arch.springing), drawn(arch.rise), drawn(arch.radius)];
  const centre = length / 2;
  const pivot = at(centre, rise - radius);
  const shapes: Shape[] = [
    area(railOutline(part), 'outline', 'wood'),
    area(
      {
        start: at(springing, 0),
        runs: [{ kind: 'arc', to: at(length - springing, 0), centre: pivot, clockwise: true }],
        open: true,
      },
      'arch',
      'none',
      'cut',
    ),
    symbol('pivot', pivot, 'pivot'),
    ...dimension('radius', arch.radius, pivot, at(length - springing, 0), 'along', 0, {
      datum: true,
      // A pivot near the flats leaves no room below the line.
      ...(rise > radius * 0.7 ? { valueAt: at(centre + (length / 2 - springing) * 0.5, rise * 0.35) } : {}),
    }),
  ];
  if (stage.stage === 'smooth') return [...shapes, ...drumOn(pivot, radius, stage)];
  const s = stage.settings;
  return [
    ...shapes,
    area(stroke(pivot, at(centre, width)), 'centre-line', 'none', 'centre'),
    ...dimension('springing', s.springing, at(0, width), at(springing, 0), 'above', 1, { datum: true }),
    ...dimension('centre', s.centre, at(0, width), at(centre, width), 'above', 2, { datum: true }),
    ...dimension('chord', s.chord, at(springing, 0), at(length - springing, 0), 'below', 2),
    ...dimension('rise', s.rise, at(length, 0), at(centre, rise), 'right', 1, { datum: true }),
    ...dimension('pivot', s.pivot, at(0, 0), pivot, 'left', 1, { datum: true }),
  ];
}

/** The sander's drum against the arch at its crown, from within. */
function drumOn(pivot: Point, radius: number, stage: PlanStage): Shape[] {
  const r = drawn(stage.settings.drum) / 2;
  if (r <= 0) return [];
  const centre = at(pivot.x, pivot.y + radius - r);
  const [left, right] = [at(centre.x - r, centre.y), at(centre.x + r, centre.y)];
  return [
    area(
      {
        start: left,
        runs: [
          { kind: 'arc', to: right, centre, clockwise: false },
          { kind: 'arc', to: left, centre, clockwise: false },
        ],
      },
      'drum',
      'tool',
      'fine',
    ),
    ...dimension('drum', stage.settings.drum, left, right, 'above', 1),
  ];
}

/** A rail as it lies bead edge down: the bottom rail turned over. A mid rail has a bead on both edges. */
function beadDown(part: PlanPart): PlanPart {
  return part.part === 'rail-bottom' ? { ...part, part: 'rail-top' } : part;
}

/** One end of a rail against the stop, the rest broken off. */
function railEnd(part: PlanPart, upTo: number): Shape[] {
  const { width } = profileOf(part);
  return [area(member(0, upTo, width, { left: false, right: true }), 'outline', 'wood'), ...stopBlock(width)];
}

/** How long a stop block is drawn, in widths of the rail. */
const BLOCK = 0.25;

function endReach(part: PlanPart): number {
  const { length, width } = profileOf(part);
  return Math.min(length / 2, Math.max(width * 1.4, drawn(stageOf(part, 'shoulder')?.settings.stop) * 2.4));
}

/** Shoulders: face down, rail's end against the stop; the blade's side away from the stop cuts the line. */
export function shoulderSetup(part: PlanPart, stage: PlanStage): Shape[] {
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
    ...dimension('stop', stage.settings.stop, at(0, width), at(stop, width), 'above', 1, { datum: true }),
  ];
}

/** How wide the blade is drawn, in widths of the rail: no setting of it is known here. */
const KERF = 0.05;

/** The tenon's edges, bead edge down: each with its own stop and height; what is hatched comes off. */
export function tenonSetup(asPlanned: PlanPart, stage: PlanStage): Shape[] {
  const part = beadDown(asPlanned);
  const { width } = profileOf(part);
  const s = stage.settings;
  const reach = endReach(part);
  const innerHeight = drawn(s.innerHeight);
  const mid = s.outerHeight === undefined;
  const shoulder = drawn(stageOf(part, 'shoulder')?.settings.stop);
  return [
    ...railEnd(part, reach),
    ...tenonWaste(part, 'left').map((waste) => area(waste, 'tenon-waste', 'waste', 'cut')),
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
    ...dimension('innerStop', s.innerStop, at(0, 0), at(drawn(s.innerStop), 0), 'below', 1, KEPT),
    ...dimension('innerHeight', s.innerHeight, at(reach, 0), at(reach, innerHeight), 'right', 1, KEPT),
    ...dimension('outerStop', s.outerStop, at(0, width), at(drawn(s.outerStop), width), 'above', 1, KEPT),
    ...dimension(
      'outerHeight',
      s.outerHeight,
      at(reach, width),
      at(reach, width - drawn(s.outerHeight)),
      'right',
      1,
      KEPT,
    ),
    ...dimension('width', s.width, at(0, innerHeight), at(0, innerHeight + drawn(s.width)), 'left', 1, {
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
export function railMitreSetup(part: PlanPart, stage: PlanStage): Shape[] {
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
    ...dimension('shoulderLine', s.shoulderLine, at(0, width), at(shoulder, bead), 'above', 1, {
      datum: true,
    }),
    ...dimension('sightEdge', s.sightEdge, at(0, 0), at(sight, 0), 'below', 1, { datum: true }),
    ...dimension('height', s.height, at(reach, 0), at(reach, bead), 'right', 1, { datum: true }),
  ];
}

/**
 * The tenon's cheeks: the rail lies face down on the table, seen from its edge, and is crosscut side by side from the
 * shoulder to the end; then the same on the other face, and at the other end.
 */
export function cheekSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { thickness } = profileOf(part);
  const s = stage.settings;
  const [wall, thick] = [drawn(s.height), drawn(s.thickness)];
  const shoulder = stageOf(part, 'shoulder')?.settings.stop;
  const tenon = drawn(shoulder);
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
    ...dimension('tenonLength', shoulder, at(0, thickness), at(tenon, thickness), 'above', 1, {
      datum: true,
    }),
    ...dimension('height', s.height, at(reach, 0), at(reach, wall), 'right', 1, { datum: true }),
    ...dimension('thickness', s.thickness, at(0, wall), at(0, wall + thick), 'left', 1),
  ];
}

/** The haunch that stays beside the tenon, bead edge down. */
export function haunchSetup(asPlanned: PlanPart, stage: PlanStage): Shape[] {
  const part = beadDown(asPlanned);
  const { width } = profileOf(part);
  const shoulder = drawn(stageOf(part, 'shoulder')?.settings.stop);
  const [long, high] = [drawn(stage.settings.length), drawn(stage.settings.height)];
  const reach = endReach(part);
  const tenon = stageOf(part, 'tenon')?.settings;
  const [inner, outer] = [drawn(tenon?.innerHeight), drawn(tenon?.outerHeight)];
  return [
    area(polygon([at(shoulder, 0), at(reach, 0), at(reach, width), at(shoulder, width)]), 'outline', 'wood'),
    area(rectangle(0, inner, shoulder, width - outer), 'tenon', 'wood'),
    ...(long > 0
      ? [area(rectangle(shoulder - long, width - high, shoulder, width), 'haunch', 'wood', 'cut')]
      : []),
    label(say('drawing.bead-edge'), at(reach * 0.8, width * 0.15), 'edge-name', 'small'),
    ...dimension(
      'length',
      stage.settings.length,
      at(shoulder, width),
      at(shoulder - long, width),
      'above',
      1,
      {
        datum: true,
      },
    ),
    ...dimension('height', stage.settings.height, at(0, width), at(0, width - high), 'left', 1, {
      datum: true,
    }),
  ];
}

/** A rail as it is when its mitres are pared: seen from the front, nothing to set. */
export function railBench(part: PlanPart): Shape[] {
  return railFront(part);
}
