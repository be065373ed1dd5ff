import type { Path, Point, Shape } from '../drawing/model.ts';
import { area, at, dimension, label, stroke, symbol } from '../drawing/shapes.ts';
import type { Arch } from '../outline/head.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { say } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { feedArrow, turnArrow } from './feed-arrow.ts';
import { profileOf } from './profile.ts';
import { headOfRail } from './rail-blank.ts';
import { ghostAt, type Sets } from './sets.ts';
import { between, halfChord, overPivot, trammelSaw } from './trammel.ts';

/** How far the finished arc and the sawn one are drawn apart at least, in lengths of the rail. */
const APART = 0.008;

/** An arched rail, its end at x = 0 and the sight edge of its flats at y = 0, with the pivot of its arcs below. */
interface Rail {
  readonly length: number;
  readonly width: number;
  readonly head: Arch;
  readonly pivot: Point;
}

function railOf(part: PlanPart): Rail | null {
  const head = headOfRail(part);
  const arch = stageOf(part, 'arch')?.settings;
  if (head === null || arch === undefined) return null;
  const { length, width } = profileOf(part);
  return { length, width, head, pivot: at(drawn(arch.centre), -head.pivot) };
}

/** The rail with its arch sawn to a radius. */
function sawnTo({ length, width, pivot }: Rail, radius: number): Path {
  const arc = overPivot(pivot, radius, 0);
  return {
    start: at(0, 0),
    runs: [
      { kind: 'line', to: arc.start },
      ...arc.runs,
      ...[at(length, 0), at(length, width), at(0, width)].map((to) => ({ kind: 'line', to }) as const),
    ],
  };
}

/** The radius from the pivot to where its arc comes to the flats. */
function radiusOf({ head, pivot }: Rail, printed: string): Shape {
  const half = halfChord(pivot, drawn(printed), 0);
  const close = head.rise > (head.pivot + head.rise) * 0.7;
  return dimension('radius', printed, pivot, at(pivot.x + half, 0), 'along', 0, {
    datum: true,
    // A pivot near the flats leaves no room below the line.
    ...(close ? { valueAt: at(pivot.x + half * 0.5, head.rise * 0.35) } : {}),
  });
}

/** The arch sawn with the trammel inside its line, all of it measured from the rail's end and its flats. */
export function archSetup(
  part: PlanPart,
  { settings: s }: StageOf<'arch'>,
  _place: PlaceName | undefined,
  sets: Sets,
): Shape[] {
  const rail = railOf(part);
  if (rail === null) return [];
  const { length, width, head, pivot } = rail;
  const { at: set, line } = sets('radius', s.radius);
  const [springing, centre, radius] = [drawn(s.springing), pivot.x, drawn(set)];
  return [
    area(sawnTo(rail, radius), 'outline', 'wood'),
    area({ ...overPivot(pivot, radius, 0), open: true }, 'arch', 'none', 'cut'),
    ...(line === null ? [] : finishedArc(rail, ghostAt(radius, drawn(line), length * APART))),
    ...trammelSaw(pivot, radius, 0, length, -1),
    symbol('pivot', pivot, 'pivot'),
    area(stroke(pivot, at(centre, width)), 'centre-line', 'none', 'centre'),
    radiusOf(rail, set),
    dimension('springing', s.springing, at(0, width), at(springing, 0), 'above', 1, { datum: true }),
    dimension('centre', s.centre, at(0, width), at(centre, width), 'above', 2, { datum: true }),
    dimension('chord', s.chord, at(springing, 0), at(length - springing, 0), 'below', 2),
    dimension('rise', s.rise, at(length, 0), at(centre, head.rise), 'right', 1, { datum: true }),
    dimension('pivot', s.pivot, at(0, 0), pivot, 'left', 1, { datum: true }),
  ];
}

/** The arc that is sanded to, with its name led to it from over it. */
function finishedArc({ length, width, head, pivot }: Rail, radius: number): Shape[] {
  const half = halfChord(pivot, radius, 0);
  const over = half * 0.28;
  const touch = at(pivot.x + over, pivot.y + Math.sqrt(radius * radius - over * over));
  const name = at(pivot.x + half * 0.42, head.rise + (width - head.rise) * 0.55);
  return [
    area({ ...overPivot(pivot, radius, 0), open: true }, 'finished-line', 'none', 'ghost'),
    area(stroke(touch, at(name.x, name.y - length * 0.02)), 'leader', 'none', 'fine'),
    label(say('drawing.finished-line'), name, 'line-name', 'small', 'middle'),
  ];
}

/** The arch sanded to its radius, the drum against it from within; what is there is the edge as it was sawn. */
export function smoothSetup(
  part: PlanPart,
  { settings }: StageOf<'smooth'>,
  _place: PlaceName | undefined,
  sets: Sets,
): Shape[] {
  const rail = railOf(part);
  if (rail === null) return [];
  const { length, head, pivot } = rail;
  const radius = drawn(settings.radius);
  const saw = stageOf(part, 'arch')?.settings.radius ?? settings.radius;
  const sawn = ghostAt(radius, drawn(sets('radius', saw, 'arch').at), length * APART);
  const half = halfChord(pivot, radius, 0);
  return [
    area(sawnTo(rail, sawn), 'outline', 'wood'),
    area(between(pivot, radius, sawn, 0), 'waste', 'waste', 'none'),
    ...(settings.drum === undefined ? [] : drumOn(at(pivot.x, pivot.y + radius), settings.drum)),
    area({ ...overPivot(pivot, radius, 0), open: true }, 'arch', 'none', 'cut'),
    symbol('pivot', pivot, 'pivot'),
    label(say('drawing.as-sawn'), at(pivot.x - half * 0.72, head.rise * 0.12), 'line-name', 'small'),
    label(say('drawing.feed-against'), at(pivot.x, head.rise + length * 0.04), 'feed-name', 'small'),
    ...(settings.drum === undefined ? [] : againstDrum(rail)),
    radiusOf(rail, settings.radius),
  ];
}

/** Which way the rail is fed over a drum that turns as it is drawn: to the right, where the drum's top comes to the left. */
function againstDrum({ length, width, head, pivot }: Rail): Shape[] {
  const y = Math.min(head.rise + length * 0.08, (head.rise + width) / 2 + (width - head.rise) * 0.3);
  const half = length * 0.07;
  return feedArrow(at(pivot.x - half, y), at(pivot.x + half, y), length * 0.024);
}

/** The sander's drum against the arch at its crown, from within, turning anticlockwise from above; a step says what to do where it turns otherwise. */
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
    ...turnArrow(centre, r * 0.62, 40, 140, r * 0.24),
    dimension('drum', drum, left, right, 'above', 1),
  ];
}
