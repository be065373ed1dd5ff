import { moved } from '../outline/moved.ts';
import type { PlanPart, PlanStage } from '../plan/plan.ts';
import { say, type WordKey } from '../words/say.ts';
import type { Point, Shape } from './model.ts';
import { drawn, profileOf, stageOf } from './plan-number.ts';
import { beadWaste, grooveWaste, memberSection } from './section-view.ts';
import { area, at, dimension, label, polygon, rectangle } from './shapes.ts';

/** Only the part of the section near the sight edge is drawn, so that bead and groove are large. */
const SHOWN = 4;

/** Section near the sight edge: at most four groove depths of it, the rest broken off. */
function nearEdge(part: PlanPart): PlanPart {
  const { width, grooveDepth, bead, thickness } = profileOf(part);
  const shown = Math.min(width, Math.max(SHOWN * Math.max(grooveDepth, bead), thickness * 1.6));
  return { ...part, width: String(shown) };
}

/** On the router table, front down: the sight edge to the cutter, its top above the table by the setting. */
export function tableCutterSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const near = nearEdge(part);
  const { width, thickness, wall } = profileOf(near);
  const lie = (point: Point): Point => at(point.y, point.x);
  const slot = stage.stage === 'slot';
  const waste = slot ? grooveWaste(near) : beadWaste(near);
  const s = stage.settings;
  const grooveWidth = drawn(s.width);
  return [
    area(moved(memberSection(near, { bead: slot, groove: slot }), lie, true), 'section', 'section'),
    area(moved(waste, lie, true), 'waste', 'waste', 'cut'),
    area(rectangle(-thickness * 0.3, -thickness * 0.16, width + thickness * 1.1, 0), 'table', 'tool'),
    label(say('drawing.table'), at(width * 0.3, -thickness * 0.08), 'table-name', 'small'),
    area(
      rectangle(
        width + thickness * 0.12,
        0,
        width + thickness * 0.6,
        slot ? wall + grooveWidth : drawn(s.cutterHeight),
      ),
      'cutter',
      'tool',
      'fine',
    ),
    label(say('drawing.front-down'), at(width * 0.42, thickness * 0.14), 'face', 'small'),
    ...turned(part, width * 0.42, thickness),
    ...dimension(
      'cutterHeight',
      s.cutterHeight,
      at(width + thickness * 1.1, 0),
      at(width + thickness * 1.1, drawn(s.cutterHeight)),
      'right',
      1,
      { datum: true },
    ),
    ...dimension('bead', s.bead, at(width, thickness), at(width - drawn(s.bead), thickness), 'above', 1, {
      datum: true,
    }),
    ...dimension(
      'fillet',
      s.fillet,
      at(-thickness * 0.3, 0),
      at(-thickness * 0.3, drawn(s.fillet)),
      'left',
      1,
      { datum: true },
    ),
    ...(slot
      ? dimension('depth', s.depth, at(width, thickness), at(width - drawn(s.depth), thickness), 'above', 1, {
          datum: true,
        })
      : []),
    ...(slot ? dimension('width', s.width, at(width, wall), at(width, wall + grooveWidth), 'left', 2) : []),
  ];
}

/**
 * How the blank is turned, front down with its bead edge at the right: which end of a stile is nearest then (a left
 * stile’s top, a right stile’s bottom), and which edge of a rail is at the cutter.
 */
function turned({ part }: PlanPart, x: number, thickness: number): Shape[] {
  const [large, small] = TURNED[part] ?? BOTH_EDGES;
  return [
    label(say(large), at(x, thickness * 0.66), 'near-end', 'large', 'middle', thickness * 0.3),
    label(say(small), at(x, thickness * 0.42), 'near-end-note', 'small'),
  ];
}

const BOTH_EDGES = ['drawing.both-edges', 'drawing.to-cutter'] as const;

const TURNED: Readonly<Partial<Record<string, readonly [WordKey, WordKey]>>> = {
  'stile-left': ['drawing.top', 'drawing.near-end'],
  'stile-right': ['drawing.bottom', 'drawing.near-end'],
  'rail-bottom': ['drawing.upper-edge', 'drawing.to-cutter'],
  'rail-top': ['drawing.lower-edge', 'drawing.to-cutter'],
};

/** The groove on the table saw: sight edge down on the blade, a face to the fence, then the other. */
export function grooveSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const near = nearEdge(part);
  const { width, thickness } = profileOf(near);
  const lie = (point: Point): Point => at(thickness - point.x, width - point.y);
  const s = stage.settings;
  const [fence, depth, groove] = [drawn(s.fence), drawn(s.depth), drawn(s.width)];
  const right = thickness;
  return [
    area(moved(memberSection(near, { bead: true, groove: false }), lie), 'section', 'section'),
    area(rectangle(right - fence - groove, 0, right - fence, depth), 'waste', 'waste', 'cut'),
    area(rectangle(right, -thickness * 0.16, right + thickness * 0.35, width * 0.9), 'fence', 'tool'),
    label(say('drawing.fence'), at(right + thickness * 0.175, width * 0.5), 'fence-name', 'small'),
    area(rectangle(-thickness * 0.5, -thickness * 0.16, right, 0), 'table', 'tool'),
    ...dimension(
      'fence',
      s.fence,
      at(right, -thickness * 0.16),
      at(right - fence, -thickness * 0.16),
      'below',
      1,
      { datum: true },
    ),
    ...dimension(
      'width',
      s.width,
      at(right - fence, -thickness * 0.16),
      at(right - fence - groove, -thickness * 0.16),
      'below',
      2,
    ),
    ...dimension('depth', s.depth, at(-thickness * 0.5, 0), at(-thickness * 0.5, depth), 'left', 1, {
      datum: true,
    }),
  ];
}

/** The tenon's cheeks, end on: what is hatched comes off both faces. */
export function cheekSetup(part: PlanPart, stage: PlanStage): Shape[] {
  const { width, thickness } = profileOf(part);
  const wall = drawn(stage.settings.height);
  const thick = drawn(stage.settings.thickness);
  return [
    area(rectangle(0, 0, width, thickness), 'end', 'section'),
    area(rectangle(0, 0, width, wall), 'waste', 'waste', 'cut'),
    area(rectangle(0, thickness - wall, width, thickness), 'waste', 'waste', 'cut'),
    ...dimension('height', stage.settings.height, at(width, 0), at(width, wall), 'right', 1, { datum: true }),
    ...dimension('thickness', stage.settings.thickness, at(0, wall), at(0, wall + thick), 'left', 1),
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
