import type { Path, Point, Shape } from '../drawing/model.ts';
import { area, at, dimension, label, rectangle } from '../drawing/shapes.ts';
import { moved } from '../outline/moved.ts';
import { readPart } from '../plan/part-name.ts';
import type { PlanPart, StageOf } from '../plan/plan.ts';
import { say, type WordKey } from '../words/say.ts';
import { drawn } from './drawn.ts';
import { nearEdge, sightEdgeWord } from './near-edge.ts';
import type { Profile } from './profile.ts';
import { beadWaste, grooveWaste, memberSection, type SectionState } from './section-view.ts';

/** What a cutter in the router table takes off, and how far it stands above the table. */
interface TableCut {
  /** What is cut of the section before it. */
  readonly before: SectionState;
  readonly waste: Path;
  /** The top of the cutter, as it is drawn. */
  readonly top: number;
  /** How far from the sight edge it cuts. */
  readonly reach: number;
}

/** On the router table, front down: the sight edge to the cutter. */
function onRouterTable(part: PlanPart, near: Profile, { before, waste, top, reach }: TableCut): Shape[] {
  const { width, thickness } = near;
  const lie = (point: Point): Point => at(point.y, point.x);
  // Words stand clear of what is taken off.
  const words = (width - reach) / 2;
  return [
    area(moved(memberSection(near, before), lie, true), 'section', 'section'),
    area(moved(waste, lie, true), 'waste', 'waste', 'cut'),
    area(rectangle(-thickness * 0.3, -thickness * 0.16, width + thickness * 0.75, 0), 'table', 'tool'),
    label(say('drawing.table'), at(width * 0.3, -thickness * 0.08), 'table-name', 'small'),
    area(rectangle(width + thickness * 0.08, 0, width + thickness * 0.5, top), 'cutter', 'tool', 'fine'),
    label(
      say('drawing.cutter'),
      at(width + thickness * 0.29, top + thickness * 0.11),
      'cutter-name',
      'small',
      'middle',
      Infinity,
      { across: thickness * 0.56 },
    ),
    label(
      say('drawing.front-down'),
      at(width * 0.42, thickness * 0.14),
      'face',
      'small',
      'middle',
      Infinity,
      { ground: true },
    ),
    ...turned(part, words, thickness, words * 1.9),
  ];
}

const KEPT = { keepName: true } as const;
const KEPT_DATUM = { datum: true, keepName: true } as const;

/** How high the cutter stands above the table, at the right of the section. */
function cutterHeight({ width, thickness }: Profile, height: string): Shape {
  const x = width + thickness * 0.75;
  return dimension('cutterHeight', height, at(x, 0), at(x, drawn(height)), 'right', 1, KEPT_DATUM);
}

/** Sticking the bead: the cutter's top level with the front wall of the groove to come. */
export function beadSetup(part: PlanPart, { settings: s }: StageOf<'bead'>): Shape[] {
  const near = nearEdge(part, 3.8);
  const { width, thickness } = near;
  const [bead, left] = [drawn(s.bead), -thickness * 0.3];
  return [
    ...onRouterTable(part, near, {
      before: { bead: false, groove: false },
      waste: beadWaste(near),
      top: drawn(s.cutterHeight),
      reach: bead,
    }),
    cutterHeight(near, s.cutterHeight),
    dimension('bead', s.bead, at(width, thickness), at(width - bead, thickness), 'above', 1, KEPT_DATUM),
    dimension('fillet', s.fillet, at(left, 0), at(left, drawn(s.fillet)), 'left', 1, KEPT_DATUM),
  ];
}

/** Routing the groove of an arched rail: the slot cutter bears on the back wall. */
export function slotSetup(part: PlanPart, { settings: s }: StageOf<'slot'>): Shape[] {
  const near = nearEdge(part, 3.8);
  const { width, thickness, wall } = near;
  const [groove, depth] = [drawn(s.width), drawn(s.depth)];
  return [
    ...onRouterTable(part, near, {
      before: { bead: true, groove: true },
      waste: grooveWaste(near),
      top: wall + groove,
      reach: depth,
    }),
    cutterHeight(near, s.cutterHeight),
    dimension('depth', s.depth, at(width, thickness), at(width - depth, thickness), 'above', 1, KEPT_DATUM),
    dimension('width', s.width, at(width, wall), at(width, wall + groove), 'left', 2, KEPT),
  ];
}

/**
 * How the blank is turned, front down with its bead edge at the right: which end of a stile is nearest then (a left
 * stile’s top, a right stile’s bottom), and which edge of a rail is at the cutter.
 */
function turned(part: PlanPart, x: number, thickness: number, across: number): Shape[] {
  const [large, small] = turnedWords(part);
  return [
    label(say(large), at(x, thickness * 0.68), 'near-end', 'large', 'middle', thickness * 0.3, {
      ground: true,
      across,
    }),
    label(say(small), at(x, thickness * 0.42), 'near-end-note', 'small', 'middle', Infinity, {
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
