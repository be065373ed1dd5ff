import type { Path, Shape } from '../drawing/model.ts';
import { area, at, label, rectangle } from '../drawing/shapes.ts';
import type { PlanPart } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import { profileOf } from './profile.ts';
import { headOfRail, shoulderOf, sightEdges } from './rail-blank.ts';
import { gaugeOver } from './saw-tools.ts';
import { member } from './stile-blank.ts';

/** How far an end of a rail is drawn, from the end. */
export function endReach(part: PlanPart): number {
  const { length, width } = profileOf(part);
  return Math.min(length / 2, Math.max(width * 1.4, shoulderOf(part) * 2.4));
}

/** How long a stop block is drawn, and how high the gauge over a piece. */
export interface Standing {
  readonly block: number;
  readonly gauge: number;
}

/** Stop block and gauge for a drawing of this size. */
export function standing(size: number): Standing {
  return { block: size * 0.3, gauge: size * 0.17 };
}

/** One end of a rail against the stop and before the gauge, its sight edge down, the rest broken off. */
export function railEnd(part: PlanPart, reach: number, stand: Standing): Shape[] {
  const { width } = profileOf(part);
  return [
    ...gaugeOver({ from: -stand.block, to: reach }, width, stand.gauge),
    area(railEndOutline(part, reach), 'outline', 'wood'),
    ...stopAt(0, width, stand.block),
  ];
}

/** A stop block against an end at x, under its name. */
export function stopAt(x: number, width: number, block: number): Shape[] {
  const high = width * 0.7;
  return [
    area(rectangle(x - block, 0, x, high), 'stop', 'tool'),
    label(say('drawing.stop'), at(x - block * 0.06, (high + width) / 2), 'stop-name', 'small', 'end'),
  ];
}

/** A rail’s end, its sight edge below as it runs: level, or over a flat into the arch. */
export function railEndOutline(part: PlanPart, reach: number): Path {
  const { width, length } = profileOf(part);
  const head = headOfRail(part);
  const springing = head === null ? reach : (length - head.chord) / 2;
  if (head === null || springing >= reach) return member(0, reach, width, { left: false, right: true });
  const centre = at(length / 2, -head.pivot);
  const radius = head.pivot + head.rise;
  const rises = centre.y + Math.sqrt(Math.max(0, radius * radius - (reach - centre.x) ** 2));
  const [tooth, left] = [width * 0.06, width - rises];
  return {
    start: at(0, 0),
    runs: [
      { kind: 'line', to: at(springing, 0) },
      { kind: 'arc', to: at(reach, rises), centre, clockwise: true },
      { kind: 'line', to: at(reach - tooth, rises + left * 0.35) },
      { kind: 'line', to: at(reach + tooth, rises + left * 0.65) },
      { kind: 'line', to: at(reach, width) },
      { kind: 'line', to: at(0, width) },
    ],
  };
}

/** How often it is done: at both ends, and on a mid rail on both of its edges. */
export function allEnds(part: PlanPart, x: number): Shape[] {
  const { width } = profileOf(part);
  const key = sightEdges(part).length === 2 ? 'drawing.both-edges-ends' : 'drawing.both-ends';
  return [label(say(key), at(x, width * 0.55), 'both', 'small', 'middle', width * 0.3)];
}
