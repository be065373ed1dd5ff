import { drawn } from '#core/views/drawn.ts';
import { profileOf } from '#core/views/profile.ts';
import { shoulderOf } from '#core/views/rail-blank.ts';
import type { Area } from '#core/drawing/model.ts';
import { area, at, polygon, rectangle } from '#core/drawing/shapes.ts';
import { readPart } from '#core/plan/part-name.ts';
import type { PlanPart } from '#core/plan/plan.ts';
import { stageOf } from '#core/plan/stage-of.ts';

/** The tenons at both ends of a rail's rod as they stay: their edges between the setbacks, the haunch beside them. */
export function tenonShapes(part: PlanPart): Area[] {
  const { length, width } = profileOf(part);
  const tenon = stageOf(part, 'tenon')?.settings;
  if (tenon === undefined) return [];
  const stop = shoulderOf(part);
  const kept = tenon.outerStop === undefined ? stop : drawn(tenon.outerStop);
  const inner = width - drawn(tenon.innerHeight);
  const outer = tenon.outerHeight === undefined ? drawn(tenon.innerHeight) : drawn(tenon.outerHeight);
  const between = (x1: number, y1: number, x2: number, y2: number, role: string) =>
    area(rectangle(x1, Math.min(y1, y2), x2, Math.max(y1, y2)), role, 'none', 'hidden');
  const ends = [
    [0, stop, kept],
    [length, length - stop, length - kept],
  ] as const;
  return ends.flatMap(([end, shoulder, haunch]) => [
    between(outer, end, inner, shoulder, 'tenon'),
    ...(haunch === shoulder ? [] : [between(0, haunch, outer, shoulder, 'haunch')]),
  ]);
}

/** The mitred ends of the bead on a rail’s rod: from the sight edge out to the shoulder line. */
export function mitreShapes(part: PlanPart): Area[] {
  const { length, width } = profileOf(part);
  const mitre = stageOf(part, 'mitre')?.settings;
  if (mitre === undefined) return [];
  const [edge, line, height] = [drawn(mitre.sightEdge), drawn(mitre.shoulderLine), drawn(mitre.height)];
  const edges =
    readPart(part).at === 'mid'
      ? [
          [width, width - height],
          [0, height],
        ]
      : [[width, width - height]];
  return edges.flatMap(([out = 0, inward = 0]) =>
    [
      [edge, line],
      [length - edge, length - line],
    ].map(([sight = 0, shoulder = 0]) =>
      area(polygon([at(out, sight), at(inward, shoulder), at(out, shoulder)]), 'mitre', 'none', 'edge'),
    ),
  );
}
