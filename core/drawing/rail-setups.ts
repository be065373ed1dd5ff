import type { PlanPart, PlanStage } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Shape } from './model.ts';
import { drawn, profileOf } from './plan-number.ts';
import { railFront, railOutline, sightEdges, tenonWaste } from './rail-blank.ts';
import { area, at, dimension, label, polygon, rectangle, stroke, symbol } from './shapes.ts';
import { stopBlock } from './stile-setups.ts';

/** The arch on the rail: pivot, radius, springings. The sight edge of the flats is at y = 0. */
export function archSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { length, width } = profileOf(part);
  const s = stage.settings;
  const [springing, rise, radius, pivot] = [
    drawn(s.springing),
    drawn(s.rise),
    drawn(s.radius),
    drawn(s.pivot),
  ];
  const centre = length / 2;
  const crown = at(centre, rise);
  const shapes: Shape[] = [area(railOutline(part), 'outline', 'wood')];
  if (stage.stage === 'smooth') {
    return [
      ...shapes,
      area(
        stroke(
          at(centre, -pivotOf(part)),
          at(centre + radius * Math.SQRT1_2 * 0.9, -pivotOf(part) + radius * Math.sqrt(1 - 0.405)),
        ),
        'radius',
        'none',
        'none',
      ),
      label(say('drawing.top'), at(centre, width * 0.8), 'end-name', 'normal'),
      ...dimension('radius', s.radius, at(centre, rise - radius), crown, 'along', 0, { datum: true }),
      symbol('pivot', at(centre, rise - radius), 'pivot'),
    ];
  }
  return [
    ...shapes,
    area(
      {
        start: at(springing, 0),
        runs: [
          { kind: 'arc', to: at(length - springing, 0), centre: at(centre, rise - radius), clockwise: true },
        ],
        open: true,
      },
      'arch',
      'none',
      'cut',
    ),
    area(stroke(at(centre, -pivot), at(centre, width)), 'centre-line', 'none', 'centre'),
    symbol('pivot', at(centre, -pivot), 'pivot'),
    ...dimension('springing', s.springing, at(0, width), at(springing, 0), 'above', 1, { datum: true }),
    ...dimension('centre', s.centre, at(0, width), at(centre, width), 'above', 2, { datum: true }),
    ...dimension('chord', s.chord, at(springing, 0), at(length - springing, 0), 'below', 1),
    ...dimension('rise', s.rise, at(length, 0), at(centre, rise), 'right', 1, { datum: true }),
    ...dimension('pivot', s.pivot, at(0, 0), at(centre, -pivot), 'left', 1, { datum: true }),
    ...dimension('radius', s.radius, at(centre, -pivot), at(length - springing, 0), 'along', 0, {
      datum: true,
    }),
  ];
}

function pivotOf(part: PlanPart): number {
  return drawn(part.stages.find(({ stage }) => stage === 'arch')?.settings.pivot);
}

/** One end of a rail against the stop, the rest broken off. */
function railEnd(part: PlanPart, upTo: number): Shape[] {
  const { width } = profileOf(part);
  return [
    area(
      polygon([
        at(0, 0),
        at(upTo, 0),
        at(upTo - width * 0.06, width * 0.35),
        at(upTo + width * 0.06, width * 0.65),
        at(upTo, width),
        at(0, width),
      ]),
      'outline',
      'wood',
    ),
    ...stopBlock(width),
  ];
}

function endReach(part: PlanPart): number {
  const { length, width } = profileOf(part);
  return Math.min(
    length / 2,
    Math.max(width * 1.4, drawn(part.stages.find(({ stage }) => stage === 'shoulder')?.settings.stop) * 2.4),
  );
}

/** Shoulders: face down, rail's end against the stop; the two faces only. */
export function shoulderSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { width } = profileOf(part);
  const stop = drawn(stage.settings.stop);
  return [
    ...railEnd(part, endReach(part)),
    area(rectangle(0, 0, stop, width), 'tenon-face', 'none', 'hidden'),
    area(stroke(at(stop, 0), at(stop, width)), 'shoulder', 'none', 'cut'),
    ...dimension('stop', stage.settings.stop, at(0, width), at(stop, width), 'above', 1, { datum: true }),
  ];
}

/** The tenon's edges: each with its own stop and height; what is hatched comes off. */
export function tenonSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { width } = profileOf(part);
  const s = stage.settings;
  const reach = endReach(part);
  const [innerHeight, outerHeight] = [drawn(s.innerHeight), drawn(s.outerHeight)];
  const innerAbove = sightEdges(part).includes('above');
  const mid = s.outerHeight === undefined;
  const shoulder = drawn(part.stages.find(({ stage: name }) => name === 'shoulder')?.settings.stop);
  const inner = innerAbove
    ? ({ side: 'above', edge: width, to: width - innerHeight } as const)
    : ({ side: 'below', edge: 0, to: innerHeight } as const);
  const outer = innerAbove
    ? ({ side: 'below', edge: 0, to: outerHeight } as const)
    : ({ side: 'above', edge: width, to: width - outerHeight } as const);
  const tenonFrom = mid ? innerHeight : innerAbove ? outerHeight : innerHeight;
  return [
    ...railEnd(part, reach),
    ...tenonWaste(part, 'left').map((waste) => area(waste, 'tenon-waste', 'waste', 'cut')),
    area(stroke(at(shoulder, 0), at(shoulder, width)), 'shoulder', 'none', 'edge'),
    label(
      say('drawing.bead-edge'),
      at(reach * 0.8, innerAbove ? width * 0.85 : width * 0.15),
      'edge-name',
      'small',
    ),
    ...dimension(
      'innerStop',
      s.innerStop,
      at(0, inner.edge),
      at(drawn(s.innerStop), inner.edge),
      inner.side,
      1,
      { datum: true },
    ),
    ...dimension('innerHeight', s.innerHeight, at(reach, inner.edge), at(reach, inner.to), 'right', 1, {
      datum: true,
    }),
    ...(mid
      ? []
      : dimension(
          'outerStop',
          s.outerStop,
          at(0, outer.edge),
          at(drawn(s.outerStop), outer.edge),
          outer.side,
          1,
          { datum: true },
        )),
    ...(mid
      ? []
      : dimension('outerHeight', s.outerHeight, at(reach, outer.edge), at(reach, outer.to), 'right', 1, {
          datum: true,
        })),
    ...dimension('width', s.width, at(0, tenonFrom), at(0, tenonFrom + drawn(s.width)), 'left', 1),
  ];
}

/** The rail's mitre: its end against the stop, bead edge down. Both ends alike. */
export function railMitreSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { width, bead } = profileOf(part);
  const s = stage.settings;
  const [sight, shoulder] = [drawn(s.sightEdge), drawn(s.shoulderLine)];
  const reach = endReach(part);
  return [
    ...railEnd(part, reach),
    area(stroke(at(0, bead), at(reach, bead)), 'bead-line', 'none', 'fine'),
    area(stroke(at(shoulder, bead), at(sight, 0)), 'mitre', 'none', 'cut'),
    label(say('drawing.bead-edge'), at(reach * 0.8, width * 0.12), 'edge-name', 'small'),
    ...dimension('shoulderLine', s.shoulderLine, at(0, width), at(shoulder, bead), 'above', 1, {
      datum: true,
    }),
    ...dimension('sightEdge', s.sightEdge, at(0, 0), at(sight, 0), 'below', 1, { datum: true }),
    ...dimension('height', s.height, at(reach, 0), at(reach, bead), 'right', 1, { datum: true }),
  ];
}

/** The haunch that stays beside the tenon. */
export function haunchSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { width } = profileOf(part);
  const shoulder = drawn(part.stages.find(({ stage: name }) => name === 'shoulder')?.settings.stop);
  const [long, high] = [drawn(stage.settings.length), drawn(stage.settings.height)];
  const top = part.part === 'rail-top';
  const [y1, y2] = top ? [width - high, width] : [0, high];
  const reach = endReach(part);
  return [
    area(polygon([at(shoulder, 0), at(reach, 0), at(reach, width), at(shoulder, width)]), 'outline', 'wood'),
    area(rectangle(0, tenonEdges(part)[0], shoulder, tenonEdges(part)[1]), 'tenon', 'wood'),
    ...(long > 0 ? [area(rectangle(shoulder - long, y1, shoulder, y2), 'haunch', 'wood', 'cut')] : []),
    ...dimension(
      'length',
      stage.settings.length,
      at(shoulder, top ? width : 0),
      at(shoulder - long, top ? width : 0),
      top ? 'above' : 'below',
      1,
      { datum: true },
    ),
    ...dimension(
      'height',
      stage.settings.height,
      at(0, top ? width : 0),
      at(0, top ? width - high : high),
      'left',
      1,
      { datum: true },
    ),
  ];
}

/** Where the tenon's two edges lie across the rail. */
function tenonEdges(part: PlanPart): readonly [number, number] {
  const { width } = profileOf(part);
  const tenon = part.stages.find(({ stage }) => stage === 'tenon')?.settings;
  const [inner, outer] = [drawn(tenon?.innerHeight), drawn(tenon?.outerHeight ?? tenon?.innerHeight)];
  return part.part === 'rail-top' ? [inner, width - outer] : [outer, width - inner];
}

/** A rail as it is when its mitres are pared: seen from the front, nothing to set. */
export function railBench(part: PlanPart): Shape[] {
  return railFront(part);
}
