import type { Point, Shape } from '../drawing/model.ts';
import { area, at, dimension, label, rectangle } from '../drawing/shapes.ts';
import { moved } from '../outline/moved.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say, type WordKey } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { nearEdge, sightEdgeWord } from './near-edge.ts';
import type { Profile } from './profile.ts';
import { fedAway } from './saw-tools.ts';
import { memberSection } from './section-view.ts';

/**
 * The groove on the table saw, sight edge down: both passes at the one setting, end on. In the first the front is at
 * the fence, in the second the back; each takes what the dado is wide, and together they make the groove.
 */
export function grooveSetup(part: PlanPart, { settings: s }: StageOf<'groove'>): Shape[] {
  const near = nearEdge(part);
  const { thickness } = near;
  const [fence, depth, groove] = [drawn(s.fence), drawn(s.depth), drawn(s.width)];
  const dado = s.blade === undefined ? groove : Math.min(groove, drawn(s.blade));
  const low = -thickness * 0.2;
  const apart = thickness * 2.15;
  const cut: Pass = { near, fence, depth, dado, low, apart };
  const fenceAt = (right: number) =>
    dimension('fence', s.fence, at(right, low), at(right - fence, low), 'below', 1, { datum: true });
  return [
    ...pass(part, cut, 0, 'front'),
    ...pass(part, cut, apart, 'back'),
    fenceAt(thickness),
    fenceAt(apart + thickness),
    dimension('width', s.width, at(apart + fence, low), at(apart + fence + groove, low), 'below', 2),
    dimension('depth', s.depth, at(-thickness * 0.42, 0), at(-thickness * 0.42, depth), 'left', 1, {
      datum: true,
    }),
  ];
}

/** One setting, run twice. */
interface Pass {
  readonly near: Profile;
  readonly fence: number;
  readonly depth: number;
  readonly dado: number;
  /** How far down the table is drawn, and how far to the right the second pass. */
  readonly low: number;
  readonly apart: number;
}

/** One pass with this face to the fence, its section beginning at x. */
function pass(part: PlanPart, cut: Pass, x: number, face: 'front' | 'back'): Shape[] {
  const { near, fence, depth, dado, low, apart } = cut;
  const { width, thickness } = near;
  const right = x + thickness;
  // From the end: the front at the fence, or the back.
  const lie = (point: Point): Point => at(face === 'front' ? right - point.x : x + point.x, width - point.y);
  const taken = right - fence;
  return [
    area(rectangle(right, low, right + thickness * 0.3, width * 0.85), 'fence', 'tool'),
    label(say('drawing.fence'), at(right + thickness * 0.04, width * 0.93), 'fence-name', 'small', 'start'),
    area(
      moved(memberSection(near, { bead: true, groove: false }), lie, face === 'back'),
      'section',
      'section',
    ),
    ...(face === 'back' ? [area(rectangle(x + fence, 0, x + fence + dado, depth), 'taken', 'paper')] : []),
    area(rectangle(taken - dado, 0, taken, depth), 'waste', 'waste', 'cut'),
    area(rectangle(x - thickness * 0.42, low, right, 0), 'table', 'tool'),
    area(rectangle(taken - dado, low * 1.6, taken, 0), 'blade', 'tool'),
    label(say('drawing.blade'), at(taken - dado - thickness * 0.05, low * 1.4), 'blade-name', 'small', 'end'),
    label(
      say('drawing.sight-edge-down'),
      at(x + thickness * 0.29, low / 2),
      'edge-down',
      'small',
      'middle',
      -low,
      { across: thickness * 1.4 },
    ),
    label(
      say(`drawing.pass-${face}`),
      at(x + thickness * 0.5, width * 1.06),
      'pass',
      'normal',
      'middle',
      Infinity,
      { across: apart * 0.97 },
    ),
    ...inSection(whichWay(part, face), x, near),
    ...fedAway(at(x + thickness * 0.68, width * 0.42), thickness * 0.06, 'drawing.feed', {
      within: width * 0.14,
      ground: true,
    }),
  ];
}

/**
 * Which end of a stile is toward one who feeds it, sight edge down, with this face to a fence at the right; which edge of
 * a rail is its sight edge, both of a mid rail.
 */
function whichWay(part: PlanPart, face: 'front' | 'back'): readonly [WordKey, WordKey] {
  const read = readPart(part);
  if (read.kind === 'stile') {
    const bottom = (read.at === 'left') === (face === 'front');
    return [bottom ? 'drawing.bottom' : 'drawing.top', 'drawing.toward-you'];
  }
  const edge = sightEdgeWord(read);
  return edge === null ? ['drawing.both-edges', 'drawing.in-turn'] : [edge, 'drawing.down'];
}

/** Two lines on a white ground in the upper half of a section that begins at x. */
function inSection([large, small]: readonly [WordKey, WordKey], x: number, near: Profile): Shape[] {
  const { width, thickness } = near;
  const more = { across: thickness * 0.96, ground: true } as const;
  const middle = x + thickness / 2;
  return [
    label(say(large), at(middle, width * 0.74), 'near-end', 'large', 'middle', Infinity, more),
    label(say(small), at(middle, width * 0.57), 'near-end-note', 'small', 'middle', Infinity, more),
  ];
}
