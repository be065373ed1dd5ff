import type { Path, Shape } from '../drawing/model.ts';
import { area, at, polygon, stroke } from '../drawing/shapes.ts';
import { type Head, headRunsBack } from '../outline/head.ts';
import { shifted } from '../outline/moved.ts';
import { offset } from '../outline/offset.ts';
import { headOf, openingOutline } from '../outline/opening-outline.ts';
import type { Outline } from '../outline/outline.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlanPart } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import type { SettingsOf } from '../stages/table.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';

/** A rail's edge as a drawing has it. */
export type RailEdge = 'above' | 'below';

/** The head that a rail's sight edge follows; null on a straight rail. */
export function headOfRail(part: PlanPart): Head {
  const arch = stageOf(part, 'arch')?.settings;
  return arch === undefined
    ? null
    : { chord: drawn(arch.chord), rise: drawn(arch.rise), pivot: drawn(arch.pivot) };
}

/** The rail as milled or sawn: its sight edge, where that is below, follows the arch where it has one. */
export function railOutline(part: PlanPart): Outline {
  const { length, width } = profileOf(part);
  return {
    start: at(0, 0),
    runs: [
      ...headRunsBack(length, 0, headOfRail(part)),
      { kind: 'line', to: at(length, width) },
      { kind: 'line', to: at(0, width) },
    ],
  };
}

/** Which edges of a rail carry the bead when it lies as in the door, from the front. A mid rail has it on both. */
export function sightEdges(part: PlanPart): readonly RailEdge[] {
  const { at } = readPart(part);
  if (at === 'top') return ['below'];
  return at === 'bottom' ? ['above'] : ['above', 'below'];
}

/** The distance from a rail's end to its shoulder; 0 where it has none. */
export function shoulderOf(part: PlanPart): number {
  const shoulder = stageOf(part, 'shoulder')?.settings;
  return shoulder === undefined ? 0 : drawn(shoulder.stop);
}

/** A rail as seen from the front: outline, tenons with haunch, shoulders, mitres, bead line. */
export function railFront(part: PlanPart): Shape[] {
  const { length, width, grooveDepth } = profileOf(part);
  const shoulder = shoulderOf(part);
  const edges = sightEdges(part);
  const floor = archLine(part, grooveDepth);
  return [
    area(railOutline(part), 'outline', 'wood'),
    ...edges.flatMap((edge) => beadAt(part, edge)),
    ...[shoulder, length - shoulder].map((x) =>
      area(stroke(at(x, 0), at(x, width)), 'shoulder', 'none', 'edge'),
    ),
    ...(floor === null ? [] : [area(floor, 'groove-floor', 'none', 'hidden')]),
    ...(['left', 'right'] as const).flatMap((end) =>
      tenonWaste(part, end, edges).map((waste) => area(waste, 'tenon-waste', 'none', 'hidden')),
    ),
  ];
}

/** The bead line along one edge of a rail, and the mitres at its ends. */
function beadAt(part: PlanPart, edge: RailEdge): Shape[] {
  const { length, width, bead } = profileOf(part);
  if (bead === 0) return [];
  const shoulder = shoulderOf(part);
  const [sight, inward] = edge === 'above' ? [width, width - bead] : [0, bead];
  const line = archLine(part, bead) ?? stroke(at(shoulder, inward), at(length - shoulder, inward));
  const mitres = [
    [shoulder, 1],
    [length - shoulder, -1],
  ] as const;
  return [
    area(line, 'bead-line', 'none', 'fine'),
    ...mitres.map(([x, step]) =>
      area(stroke(at(x, inward), at(x + step * bead, sight)), 'mitre', 'none', 'edge'),
    ),
  ];
}

/** The pieces beside a tenon that are cut away, at one end of a rail whose sight edges lie so. */
export function tenonWaste(part: PlanPart, end: 'left' | 'right', sights: readonly RailEdge[]): Path[] {
  const tenon = stageOf(part, 'tenon')?.settings;
  return tenon === undefined ? [] : wasteOf(part, tenon, end, sights);
}

function wasteOf(
  part: PlanPart,
  { innerStop, innerHeight, outerStop, outerHeight }: SettingsOf<'tenon'>,
  end: 'left' | 'right',
  sights: readonly RailEdge[],
): Path[] {
  const { length, width } = profileOf(part);
  const piece = (edge: RailEdge, stop: number, height: number) => {
    const [y1, y2] = edge === 'above' ? [width - height, width] : [0, height];
    const [x1, x2] = end === 'left' ? [0, stop] : [length - stop, length];
    return polygon([at(x1, y1), at(x2, y1), at(x2, y2), at(x1, y2)]);
  };
  const inner = sights.map((edge) => piece(edge, drawn(innerStop), drawn(innerHeight)));
  if (outerStop === undefined || outerHeight === undefined) return inner;
  const outer = sights.includes('below') ? 'above' : 'below';
  return [...inner, piece(outer, drawn(outerStop), drawn(outerHeight))];
}

/** The line so far inside an arched rail's sight edge, from shoulder to shoulder: its bead line, or its groove's floor. Null on a straight rail. */
export function archLine(part: PlanPart, inside: number): Path | null {
  const head = headOfRail(part);
  if (head === null) return null;
  const { length, width, bead } = profileOf(part);
  const shoulder = shoulderOf(part);
  const line = offset(openingOutline(length - 2 * (shoulder + bead), width, head), inside);
  return line === null ? null : shifted(headOf(line), shoulder + bead, -width);
}
