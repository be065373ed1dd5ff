import type { Point, Shape } from '../drawing/model.ts';
import { area, at, dimension, stroke, symbol } from '../drawing/shapes.ts';
import { type Arch, headCurve } from '../outline/head.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { headOfRail, railOutline } from './rail-blank.ts';

/** What the band saw and the sander have in common: the rail, its arch about the pivot, and the radius. The sight edge of the flats is at y = 0. */
function archedRail(part: PlanPart, radius: string, head: Arch): Shape[] {
  const { length } = profileOf(part);
  const centre = length / 2;
  const pivot = at(centre, -head.pivot);
  const far = centre + head.chord / 2;
  const close = head.rise > (head.pivot + head.rise) * 0.7;
  return [
    area(railOutline(part), 'outline', 'wood'),
    area(headCurve(length, 0, head), 'arch', 'none', 'cut'),
    symbol('pivot', pivot, 'pivot'),
    dimension('radius', radius, pivot, at(far, 0), 'along', 0, {
      datum: true,
      // A pivot near the flats leaves no room below the line.
      ...(close ? { valueAt: at(centre + (head.chord / 2) * 0.5, head.rise * 0.35) } : {}),
    }),
  ];
}

/** The arch sawn with the trammel, all of it measured from the rail's end and its flats. */
export function archSetup(part: PlanPart, { settings: s }: StageOf<'arch'>): Shape[] {
  const head = headOfRail(part);
  if (head === null) return [];
  const { length, width } = profileOf(part);
  const [springing, centre] = [drawn(s.springing), length / 2];
  const pivot = at(centre, -head.pivot);
  return [
    ...archedRail(part, s.radius, head),
    area(stroke(pivot, at(centre, width)), 'centre-line', 'none', 'centre'),
    dimension('springing', s.springing, at(0, width), at(springing, 0), 'above', 1, { datum: true }),
    dimension('centre', s.centre, at(0, width), at(centre, width), 'above', 2, { datum: true }),
    dimension('chord', s.chord, at(springing, 0), at(length - springing, 0), 'below', 2),
    dimension('rise', s.rise, at(length, 0), at(centre, head.rise), 'right', 1, { datum: true }),
    dimension('pivot', s.pivot, at(0, 0), pivot, 'left', 1, { datum: true }),
  ];
}

/** The arch sanded to its radius, the drum against it from within. */
export function smoothSetup(part: PlanPart, { settings }: StageOf<'smooth'>): Shape[] {
  const head = headOfRail(part);
  if (head === null) return [];
  const crown = at(profileOf(part).length / 2, head.rise);
  return [
    ...archedRail(part, settings.radius, head),
    ...(settings.drum === undefined ? [] : drumOn(crown, settings.drum)),
  ];
}

/** The sander's drum against the arch at its crown, from within. */
function drumOn(crown: Point, drum: string): Shape[] {
  const r = drawn(drum) / 2;
  const centre = at(crown.x, crown.y - r);
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
    dimension('drum', drum, left, right, 'above', 1),
  ];
}
