import type { Path, Point, Shape } from '../drawing/model.ts';
import { area, at, dimension, label } from '../drawing/shapes.ts';
import { moved } from '../outline/moved.ts';
import type { Units } from '../length/units.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlaceName } from '../plan/place-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { isShortPart } from '../plan/short-part.ts';
import { say, type WordKey } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { nearEdge, sightEdgeWord } from './near-edge.ts';
import type { Profile } from './profile.ts';
import { headOfRail } from './rail-blank.ts';
import { fromAbove, type WordRoom } from './router-above.ts';
import { beadCutter, type CutterPlace, type RouterCutter, slotCutter } from './router-cutter.ts';
import { carrierOver, routerTable } from './router-table.ts';
import type { Sets } from './sets.ts';
import { beadWaste, grooveWaste, memberSection, type SectionState } from './section-view.ts';

/** What a cutter in the router table takes off. */
interface TableCut {
  /** What is cut of the section before it. */
  readonly before: SectionState;
  readonly waste: Path;
  readonly cutter: RouterCutter;
  /** How far from the sight edge it cuts. */
  readonly reach: number;
}

/** Where a member’s cutter stands: at its sight edge, which is at the right. */
function placeOf({ width, thickness }: Profile): CutterPlace {
  return { edge: width, thickness, unit: thickness };
}

/** On the router table, front down, the sight edge to the cutter: along the fence; an arched rail in its carrier, round the bearing; a short piece in one too. */
function onRouterTable(
  part: PlanPart,
  near: Profile,
  units: Units,
  { before, waste, cutter, reach }: TableCut,
): Shape[] {
  const { width, thickness } = near;
  const lie = (point: Point): Point => at(point.y, point.x);
  const place = placeOf(near);
  const arched = headOfRail(part) !== null;
  const carried = arched || isShortPart(part, units);
  const across = (width - reach) * 0.97;
  return [
    ...routerTable(place, cutter, arched ? 'pin' : 'fence'),
    area(moved(memberSection(near, before), lie, true), 'section', 'section'),
    area(moved(waste, lie, true), 'waste', 'waste', 'cut'),
    ...(carried ? carrierOver(place, 0, width - reach - thickness * 0.1) : []),
    label(
      say('drawing.front-down'),
      at((width - reach) / 2, thickness * 0.5),
      'face',
      'normal',
      'middle',
      Infinity,
      { ground: true, across },
    ),
    ...fromAbove(place, cutter, arched ? 'hollow' : 'straight', carried, (room) => turned(part, room)),
  ];
}

/** How many groove depths of a member are drawn from its sight edge. */
const DEPTHS = 3.6;

const KEPT = { keepName: true } as const;
const KEPT_DATUM = { datum: true, keepName: true } as const;

/** Sticking the bead: the cutter's top level with the front wall of the groove to come. */
export function beadSetup(
  part: PlanPart,
  { settings: s }: StageOf<'bead'>,
  _place: PlaceName | undefined,
  _sets: Sets,
  units: Units,
): Shape[] {
  const near = nearEdge(part, DEPTHS);
  const { width } = near;
  const [bead, fillet, top] = [drawn(s.bead), drawn(s.fillet), drawn(s.cutterHeight)];
  const cutter = beadCutter(placeOf(near), bead, fillet);
  return [
    ...onRouterTable(part, near, units, {
      before: { bead: false, groove: false },
      waste: beadWaste(near),
      cutter,
      reach: bead,
    }),
    dimension(
      'cutterHeight',
      s.cutterHeight,
      at(cutter.axis, 0),
      at(cutter.axis, top),
      'right',
      1,
      KEPT_DATUM,
    ),
    dimension('bead', s.bead, at(width, top), at(width - bead, fillet), 'above', 1, KEPT_DATUM),
    dimension('fillet', s.fillet, at(0, 0), at(width - bead, fillet), 'left', 1, KEPT_DATUM),
  ];
}

/** Routing the groove of an arched rail: the slot cutter bears on the back wall. */
export function slotSetup(
  part: PlanPart,
  { settings: s }: StageOf<'slot'>,
  _place: PlaceName | undefined,
  _sets: Sets,
  units: Units,
): Shape[] {
  const near = nearEdge(part, DEPTHS);
  const { width } = near;
  const [groove, depth, wall] = [drawn(s.width), drawn(s.depth), drawn(s.cutterHeight)];
  const cutter = slotCutter(placeOf(near), wall, groove, depth);
  const far = cutter.axis + cutter.radius;
  return [
    ...onRouterTable(part, near, units, {
      before: { bead: true, groove: true },
      waste: grooveWaste(near),
      cutter,
      reach: depth,
    }),
    dimension('cutterHeight', s.cutterHeight, at(far, 0), at(far, wall), 'right', 1, KEPT_DATUM),
    dimension(
      'depth',
      s.depth,
      at(width, wall + groove),
      at(width - depth, wall + groove),
      'above',
      1,
      KEPT_DATUM,
    ),
    dimension('width', s.width, at(width - depth, wall), at(width - depth, wall + groove), 'left', 1, KEPT),
  ];
}

/**
 * How the blank is turned, front down with its bead edge at the right: which end of a stile is nearest then (a left
 * stile’s top, a right stile’s bottom), and which edge of a rail is at the cutter.
 */
function turned(part: PlanPart, { x, across, low, high }: WordRoom): Shape[] {
  const [large, small] = turnedWords(part);
  return [
    label(say(large), at(x, low + high * 0.7), 'near-end', 'large', 'middle', high * 0.4, {
      ground: true,
      across,
    }),
    label(say(small), at(x, low + high * 0.24), 'near-end-note', 'small', 'middle', high * 0.28, {
      ground: true,
      across,
    }),
  ];
}

/** What is written on a blank that lies so. */
function turnedWords(part: PlanPart): readonly [WordKey, WordKey] {
  const read = readPart(part);
  if (read.kind === 'stile')
    return [read.at === 'left' ? 'drawing.top' : 'drawing.bottom', 'drawing.near-end'];
  return [sightEdgeWord(read) ?? 'drawing.both-edges', 'drawing.to-cutter'];
}
