import type { PlanPart } from '../plan/plan.ts';
import { offset } from '../outline/offset.ts';
import { headOf, openingOutline } from '../outline/opening-outline.ts';
import { shifted } from '../outline/moved.ts';
import type { Outline } from '../outline/outline.ts';
import type { Path, Run, Shape } from '../drawing/model.ts';
import { drawn, profileOf, stageOf } from './plan-number.ts';
import { area, at, polygon, rectangle, stroke } from '../drawing/shapes.ts';

/** The rail as milled or sawn: a rectangle, its sight edge hollowed by the arch where it has one. Sight edge below for a top rail, else above. */
export function railOutline(part: PlanPart): Outline {
  const { length, width } = profileOf(part);
  const arch = stageOf(part, 'arch')?.settings;
  if (arch === undefined) return rectangle(0, 0, length, width);
  const springing = drawn(arch.springing);
  const radius = drawn(arch.radius);
  const centre = at(length / 2, drawn(arch.rise) - radius);
  const runs: Run[] = [
    { kind: 'line', to: at(springing, 0) },
    { kind: 'arc', to: at(length - springing, 0), centre, clockwise: true },
    { kind: 'line', to: at(length, 0) },
    { kind: 'line', to: at(length, width) },
    { kind: 'line', to: at(0, width) },
  ];
  return { start: at(0, 0), runs };
}

/** Is this the edge of the rail that carries the bead? A mid rail has it on both. */
export function sightEdges(part: PlanPart): readonly ('above' | 'below')[] {
  if (part.part === 'rail-top') return ['below'];
  return part.part === 'rail-bottom' ? ['above'] : ['above', 'below'];
}

/** A rail as seen from the front: outline, tenons with haunch, shoulders, mitres, bead line. */
export function railFront(part: PlanPart): Shape[] {
  const { length, width, bead, grooveDepth } = profileOf(part);
  const tenon = stageOf(part, 'tenon')?.settings;
  const shoulder = drawn(stageOf(part, 'shoulder')?.settings.stop);
  const shapes: Shape[] = [area(railOutline(part), 'outline', 'wood')];
  for (const side of sightEdges(part)) {
    const edge = side === 'above' ? width : 0;
    const inward = side === 'above' ? width - bead : bead;
    if (bead === 0) continue;
    const arched = archLine(part, bead);
    if (arched !== null) shapes.push(area(arched, 'bead-line', 'none', 'fine'));
    else
      shapes.push(
        area(stroke(at(shoulder, inward), at(length - shoulder, inward)), 'bead-line', 'none', 'fine'),
      );
    for (const [x, step] of [
      [shoulder, 1],
      [length - shoulder, -1],
    ] as const)
      shapes.push(area(stroke(at(x, inward), at(x + step * bead, edge)), 'mitre', 'none', 'edge'));
  }
  for (const x of [shoulder, length - shoulder])
    shapes.push(area(stroke(at(x, 0), at(x, width)), 'shoulder', 'none', 'edge'));
  const floor = archLine(part, grooveDepth);
  if (floor !== null) shapes.push(area(floor, 'groove-floor', 'none', 'hidden'));
  if (tenon !== undefined)
    for (const end of ['left', 'right'] as const)
      for (const waste of tenonWaste(part, end)) shapes.push(area(waste, 'tenon-waste', 'none', 'hidden'));
  return shapes;
}

/** The pieces beside a tenon that are cut away, at one end of the rail. */
export function tenonWaste(part: PlanPart, end: 'left' | 'right'): Path[] {
  const { length, width } = profileOf(part);
  const tenon = stageOf(part, 'tenon')?.settings;
  if (tenon === undefined) return [];
  const piece = (side: 'above' | 'below', stop: number, height: number) => {
    const [y1, y2] = side === 'above' ? [width - height, width] : [0, height];
    const [x1, x2] = end === 'left' ? [0, stop] : [length - stop, length];
    return polygon([at(x1, y1), at(x2, y1), at(x2, y2), at(x1, y2)]);
  };
  const inner = sightEdges(part).map((side) => piece(side, drawn(tenon.innerStop), drawn(tenon.innerHeight)));
  if (tenon.outerHeight === undefined) return inner;
  const outer = part.part === 'rail-top' ? 'above' : 'below';
  return [...inner, piece(outer, drawn(tenon.outerStop), drawn(tenon.outerHeight))];
}

/** The line so far inside an arched rail's sight edge, from shoulder to shoulder: its bead line, or its groove's floor. Null on a straight rail. */
export function archLine(part: PlanPart, inside: number): Path | null {
  const arch = stageOf(part, 'arch')?.settings;
  if (arch === undefined) return null;
  const { length, width, bead } = profileOf(part);
  const shoulder = drawn(stageOf(part, 'shoulder')?.settings.stop);
  const sight = openingOutline(length - 2 * (shoulder + bead), width, {
    chord: drawn(arch.chord),
    rise: drawn(arch.rise),
    pivot: drawn(arch.pivot),
  });
  const line = offset(sight, inside);
  return line === null ? null : shifted(headOf(line), shoulder + bead, -width);
}
