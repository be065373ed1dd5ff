import { moved } from '../outline/moved.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say } from '../words/say.ts';
import type { Path, Point, Shape } from '../drawing/model.ts';
import { panelHead, panelOutline } from './panel-outline.ts';
import { drawn } from './drawn.ts';
import { area, at, dimension, label, polygon, stroke, symbol } from '../drawing/shapes.ts';
import type { Outline } from '../outline/outline.ts';
import type { PlaceName } from '../plan/place-name.ts';
import { ghostAt, type Sets } from './sets.ts';
import { halfChord, overPivot, trammelSaw } from './trammel.ts';

/** How far the finished arc is drawn from the sawn one at least, in widths of the panel. */
const APART = 0.02;

/**
 * The panel's arched head, sawn with the trammel outside its line, about the same pivot as the rail's arch. Of a high panel the stretch
 * between its foot and the pivot is left out, so that the head is large.
 */
export function cutoutSetup(
  part: PlanPart,
  { settings: s }: StageOf<'cutout'>,
  _place: PlaceName | undefined,
  sets: Sets,
): Shape[] {
  const [width, height, side] = [drawn(s.width), drawn(s.height), drawn(s.sideHeight)];
  const centre = drawn(s.centre);
  const pivot = side - drawn(s.pivot);
  const flat = drawn(s.flat);
  const foot = width * 0.3;
  const next = Math.min(side - width * 0.6, pivot - width * 0.6);
  const broken = next - foot > width * 0.3;
  const gap = width * 0.08;
  const up = (y: number) => (broken && y > foot ? y - next + foot + gap : y);
  const lift = ({ x, y }: Point) => at(x, up(y));
  const over = broken ? { brokenAt: foot + gap / 2 } : {};
  const { at: set, line } = sets('radius', s.radius);
  const [radius, about] = [drawn(set), at(centre, up(pivot))];
  const sawn = overPivot(about, radius, up(side));
  const name = Math.min(up(side) - width * 0.3, up(pivot) - width * 0.34);
  const datum = { datum: true } as const;
  return [
    ...(broken ? pieces(part, width, foot, foot + gap, lift) : [area(panelOutline(part), 'outline', 'wood')]),
    area(sawnHead(sawn, width), 'head', 'none', 'cut'),
    ...(line === null
      ? []
      : finishedHead(about, ghostAt(radius, drawn(line), width * APART), up(side), up(height), width)),
    ...trammelSaw(about, radius, up(side), width * 2, 1),
    area(stroke(at(centre, 0), at(centre, up(height))), 'centre-line', 'none', 'centre'),
    symbol('pivot', about, 'pivot'),
    symbol('arrow-up', at(centre - width * 0.34, name), 'top'),
    label(say('drawing.top'), at(centre, name), 'end-name', 'large', 'middle', Infinity, {
      across: width * 0.5,
    }),
    dimension('width', s.width, at(0, 0), at(width, 0), 'below', 2),
    dimension('centre', s.centre, at(0, 0), at(centre, 0), 'below', 1, datum),
    dimension('sideHeight', s.sideHeight, at(0, 0), at(0, up(side)), 'left', 1, { ...datum, ...over }),
    dimension('height', s.height, at(0, 0), at(0, up(height)), 'left', 2, { ...datum, ...over }),
    dimension('pivot', s.pivot, at(width, up(side)), at(centre, up(pivot)), 'right', 1, datum),
    dimension('rise', s.rise, at(width, up(side)), at(centre, up(height)), 'right', 2, datum),
    dimension('flat', s.flat, at(0, up(side)), at(flat, up(side)), 'above', 1, datum),
    dimension('chord', s.chord, at(flat, up(side)), at(width - flat, up(side)), 'above', 2),
    dimension('radius', set, about, at(centre + halfChord(about, radius, up(side)), up(side)), 'along', 0, {
      ...datum,
      valueAt: at(centre, up(pivot) - width * 0.4),
    }),
  ];
}

/** What is sawn, from one side to the other over the flats and the arc. */
function sawnHead({ start, runs }: Outline, width: number): Path {
  return {
    start: at(0, start.y),
    runs: [{ kind: 'line', to: start }, ...runs, { kind: 'line', to: at(width, start.y) }],
    open: true,
  };
}

/** The arc that is sanded to, and its name led to it from over the right flat, where nothing else stands. */
function finishedHead(pivot: Point, radius: number, height: number, top: number, width: number): Shape[] {
  const aside = width * 0.2;
  const name = at(pivot.x + width * 0.4, top + width * 0.13);
  return [
    area({ ...overPivot(pivot, radius, height), open: true }, 'finished-line', 'none', 'ghost'),
    area(
      stroke(
        at(pivot.x + aside, pivot.y + Math.sqrt(Math.max(0, radius * radius - aside * aside))),
        at(name.x - width * 0.02, name.y),
      ),
      'leader',
      'none',
      'fine',
    ),
    label(say('drawing.finished-line'), name, 'line-name', 'small', 'start'),
  ];
}

/** The panel's foot, and what is above the stretch left out. */
function pieces(
  part: PlanPart,
  width: number,
  foot: number,
  from: number,
  lift: (point: Point) => Point,
): Shape[] {
  const tooth = width * 0.03;
  const teeth = (y: number) => [at(width * 0.65, y + tooth), at(width * 0.35, y - tooth)];
  const head = moved(panelHead(part), lift);
  const above: Path = {
    start: at(width, from),
    runs: [
      { kind: 'line', to: head.start },
      ...head.runs,
      { kind: 'line', to: at(0, from) },
      ...teeth(from)
        .reverse()
        .map((to) => ({ kind: 'line', to }) as const),
    ],
  };
  return [
    area(polygon([at(0, 0), at(width, 0), at(width, foot), ...teeth(foot), at(0, foot)]), 'outline', 'wood'),
    area(above, 'outline', 'wood'),
  ];
}
