import { moved } from '../outline/moved.ts';
import type { PlanPart, PlanStage } from '../plan/plan.ts';
import { say, type WordKey } from '../words/say.ts';
import type { Point, Shape } from '../drawing/model.ts';
import { drawn, profileOf, stageOf } from './plan-number.ts';
import { beadWaste, grooveWaste, memberSection } from './section-view.ts';
import { area, at, dimension, label, polygon, rectangle } from '../drawing/shapes.ts';

/** Only the part of the section near the sight edge is drawn, so that bead and groove are large. */
const SHOWN = 4;

/** Section near the sight edge: at most four groove depths of it, the rest broken off. */
function nearEdge(part: PlanPart, depths = SHOWN): PlanPart {
  const { width, grooveDepth, bead, thickness } = profileOf(part);
  const shown = Math.min(width, Math.max(depths * Math.max(grooveDepth, bead), thickness * 0.4 * depths));
  return { ...part, width: String(shown) };
}

/** On the router table, front down: the sight edge to the cutter, its top above the table by the setting. */
export function tableCutterSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const near = nearEdge(part, 3.8);
  const { width, thickness, wall } = profileOf(near);
  const lie = (point: Point): Point => at(point.y, point.x);
  const slot = stage.stage === 'slot';
  const waste = slot ? grooveWaste(near) : beadWaste(near);
  const s = stage.settings;
  const grooveWidth = drawn(s.width);
  // Words stand clear of what is taken off.
  const words = (width - (slot ? drawn(s.depth) : drawn(s.bead))) / 2;
  return [
    area(moved(memberSection(near, { bead: slot, groove: slot }), lie, true), 'section', 'section'),
    area(moved(waste, lie, true), 'waste', 'waste', 'cut'),
    area(rectangle(-thickness * 0.3, -thickness * 0.16, width + thickness * 0.75, 0), 'table', 'tool'),
    label(say('drawing.table'), at(width * 0.3, -thickness * 0.08), 'table-name', 'small'),
    area(
      rectangle(
        width + thickness * 0.08,
        0,
        width + thickness * 0.5,
        slot ? wall + grooveWidth : drawn(s.cutterHeight),
      ),
      'cutter',
      'tool',
      'fine',
    ),
    label(
      say('drawing.cutter'),
      at(width + thickness * 0.29, (slot ? wall + grooveWidth : drawn(s.cutterHeight)) + thickness * 0.11),
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
      {
        ground: true,
      },
    ),
    ...turned(part, words, thickness, words * 1.9),
    ...dimension(
      'cutterHeight',
      s.cutterHeight,
      at(width + thickness * 0.75, 0),
      at(width + thickness * 0.75, drawn(s.cutterHeight)),
      'right',
      1,
      { datum: true, keepName: true },
    ),
    ...dimension('bead', s.bead, at(width, thickness), at(width - drawn(s.bead), thickness), 'above', 1, {
      datum: true,
      keepName: true,
    }),
    ...dimension(
      'fillet',
      s.fillet,
      at(-thickness * 0.3, 0),
      at(-thickness * 0.3, drawn(s.fillet)),
      'left',
      1,
      { datum: true, keepName: true },
    ),
    ...(slot
      ? dimension('depth', s.depth, at(width, thickness), at(width - drawn(s.depth), thickness), 'above', 1, {
          datum: true,
          keepName: true,
        })
      : []),
    ...(slot
      ? dimension('width', s.width, at(width, wall), at(width, wall + grooveWidth), 'left', 2, {
          keepName: true,
        })
      : []),
  ];
}

/**
 * How the blank is turned, front down with its bead edge at the right: which end of a stile is nearest then (a left
 * stile’s top, a right stile’s bottom), and which edge of a rail is at the cutter.
 */
function turned({ part }: PlanPart, x: number, thickness: number, across: number): Shape[] {
  const [large, small] = TURNED[part] ?? BOTH_EDGES;
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

const BOTH_EDGES = ['drawing.both-edges', 'drawing.to-cutter'] as const;

const TURNED: Readonly<Partial<Record<string, readonly [WordKey, WordKey]>>> = {
  'stile-left': ['drawing.top', 'drawing.near-end'],
  'stile-right': ['drawing.bottom', 'drawing.near-end'],
  'rail-bottom': ['drawing.upper-edge', 'drawing.to-cutter'],
  'rail-top': ['drawing.lower-edge', 'drawing.to-cutter'],
};

/**
 * The groove on the table saw, sight edge down: both passes at the one setting, end on. In the first the front is at
 * the fence, in the second the back; each takes what the dado is wide, and together they make the groove.
 */
export function grooveSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const near = nearEdge(part);
  const { width, thickness } = profileOf(near);
  const s = stage.settings;
  const [fence, depth, groove] = [drawn(s.fence), drawn(s.depth), drawn(s.width)];
  const dado = s.blade === undefined ? groove : Math.min(groove, drawn(s.blade));
  const low = -thickness * 0.2;
  const apart = thickness * 2.15;
  const pass = (x: number, face: 'front' | 'back'): Shape[] => {
    const right = x + thickness;
    // From the end: the front at the fence, or the back.
    const lie = (point: Point): Point =>
      at(face === 'front' ? right - point.x : x + point.x, width - point.y);
    const end = NEAR[part.part]?.[face];
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
        at(x + thickness * 0.5, width * 1.12),
        'pass',
        'normal',
        'middle',
        Infinity,
        { across: apart * 0.97 },
      ),
      ...(end === undefined ? edges(part, x, near) : nearEnd(end, x, near)),
    ];
  };
  return [
    ...pass(0, 'front'),
    ...pass(apart, 'back'),
    ...dimension('fence', s.fence, at(thickness, low), at(thickness - fence, low), 'below', 1, {
      datum: true,
    }),
    ...dimension(
      'fence',
      s.fence,
      at(apart + thickness, low),
      at(apart + thickness - fence, low),
      'below',
      1,
      { datum: true },
    ),
    ...dimension('width', s.width, at(apart + fence, low), at(apart + fence + groove, low), 'below', 2),
    ...dimension('depth', s.depth, at(-thickness * 0.42, 0), at(-thickness * 0.42, depth), 'left', 1, {
      datum: true,
    }),
  ];
}

/** The end of a stile that is toward one who feeds it, sight edge down, with this face to a fence at the right. */
const NEAR: Readonly<Partial<Record<string, Readonly<Record<'front' | 'back', 'top' | 'bottom'>>>>> = {
  'stile-left': { front: 'bottom', back: 'top' },
  'stile-right': { front: 'top', back: 'bottom' },
};

function nearEnd(end: 'top' | 'bottom', x: number, near: PlanPart): Shape[] {
  return inSection(say(`drawing.${end}`), say('drawing.toward-you'), x, near);
}

/** Which edge of a rail is its sight edge; both of a mid rail. */
function edges({ part }: PlanPart, x: number, near: PlanPart): Shape[] {
  const own = TURNED[part];
  return own === undefined
    ? inSection(say('drawing.both-edges'), say('drawing.in-turn'), x, near)
    : inSection(say(own[0]), say('drawing.down'), x, near);
}

/** Two lines on a white ground in the upper half of a section that begins at x. */
function inSection(large: string, small: string, x: number, near: PlanPart): Shape[] {
  const { width, thickness } = profileOf(near);
  const more = { across: thickness * 0.96, ground: true } as const;
  const middle = x + thickness / 2;
  return [
    label(large, at(middle, width * 0.74), 'near-end', 'large', 'middle', Infinity, more),
    label(small, at(middle, width * 0.57), 'near-end-note', 'small', 'middle', Infinity, more),
  ];
}

/** Raising the panel from its back, back down: the cutter in the table takes the band below the tongue that stays. */
export function raiseSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const thickness = drawn(part.thickness);
  const s = stage.settings;
  const [band, depth] = [drawn(s.band), drawn(s.depth)];
  const width = Math.min(drawn(part.width), band * 2.6);
  const inner = width - band;
  return [
    area(
      polygon([
        at(0, 0),
        at(inner, 0),
        at(inner, depth),
        at(width, depth),
        at(width, thickness),
        at(0, thickness),
      ]),
      'section',
      'section',
    ),
    area(rectangle(inner, 0, width, depth), 'waste', 'waste', 'cut'),
    area(rectangle(-thickness * 0.4, -thickness * 0.3, inner, 0), 'table', 'tool'),
    label(say('drawing.table'), at(inner * 0.25, -thickness * 0.15), 'table-name', 'small'),
    area(rectangle(inner, -thickness * 0.5, width + thickness * 0.4, depth), 'cutter', 'none', 'fine'),
    label(say('drawing.cutter'), at((inner + width) / 2, -thickness * 0.3), 'cutter-name', 'small'),
    label(say('drawing.back-down'), at(inner * 0.5, thickness * 0.2), 'face', 'small'),
    ...dimension('band', s.band, at(width, thickness), at(inner, thickness), 'above', 1, { datum: true }),
    ...dimension('tongue', s.tongue, at(width, thickness), at(width, depth), 'right', 1),
    ...dimension('depth', s.depth, at(-thickness * 0.4, 0), at(-thickness * 0.4, depth), 'left', 1, {
      datum: true,
    }),
  ];
}

/** Paring the mortise to the groove's width, looking down on the edge. */
export function pareSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { thickness } = profileOf(part);
  const wide = drawn(stage.settings.width);
  const wall = (thickness - wide) / 2;
  const mortise = stageOf(part, 'mortise');
  const first = mortise?.places?.[0]?.settings;
  const [start, stop] = [drawn(first?.start), drawn(first?.stop)];
  const end = stop + (stop - start) * 0.6;
  return [
    area(rectangle(0, 0, end, thickness), 'edge', 'wood'),
    area(rectangle(start, wall, stop, wall + wide), 'mortise', 'waste', 'cut'),
    ...dimension('width', stage.settings.width, at(end, wall), at(end, wall + wide), 'right', 1),
  ];
}
