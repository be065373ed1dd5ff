import type { Drawing, Path, Point, Shape } from '../drawing/model.ts';
import { area, at, dimension, label, polygon, rectangle, stroke } from '../drawing/shapes.ts';
import type { Hinge } from '../job/hinge-of.ts';
import { less, sum } from '../length/length.ts';
import { readPrinted } from '../length/read-printed.ts';
import { printLength } from '../length/print-length.ts';
import type { Units } from '../length/units.ts';
import { headRunsBack } from '../outline/head.ts';
import { shifted } from '../outline/moved.ts';
import { offset } from '../outline/offset.ts';
import { openingOutline } from '../outline/opening-outline.ts';
import type { Outline } from '../outline/outline.ts';
import { partsOf } from '../plan/parts-of.ts';
import type { PlanDoor, PlanPart } from '../plan/plan.ts';
import { stageOf } from '../plan/stage-of.ts';
import { trimOf } from '../plan/trim-of.ts';
import { say } from '../words/say.ts';
import { hingeMarks, nameInside, openingsOf, seenFromFront } from './door-marks.ts';
import { drawn } from './drawn.ts';
import { drawnAsBuilt, hornOf } from './horn.ts';
import { profileOf } from './profile.ts';
import { headOfRail } from './rail-blank.ts';

/** Which sizes of a door are dimensioned: all of it as built, or only what is checked when it is put together dry and glued up. */
export type DoorSizes = 'built' | 'checked';

/**
 * A door put together, as built, horns and all; from the front. x from its left edge, y from its bottom edge without
 * horns. Its parts add up to the sizes as built; the line inside is what stays after trimming. `hinge` is shown where
 * it is known.
 */
export function doorView(door: PlanDoor, units: Units, sizes: DoorSizes = 'built', hinge?: Hinge): Drawing {
  const frame = frameOf(door, units);
  const { width, height, horn, sides, tops } = frame;
  const trim = trimOf(door.values);
  return {
    title: say('drawing.door', { door: door.door }),
    units,
    shapes: [
      area(rectangle(0, -horn, sides.left, tops.left), 'stile-left', 'wood'),
      area(rectangle(sides.right, -horn, width, tops.right), 'stile-right', 'wood'),
      ...(horn === 0
        ? []
        : [0, height].map((y) => area(stroke(at(0, y), at(width, y)), 'trim-line', 'none', 'centre'))),
      ...railFaces(door, frame),
      ...openingsOf(door).flatMap((opening, k) => openingShapes(door, frame, opening, k, sizes)),
      area(
        rectangle(drawn(trim.left), drawn(trim.bottom), width - drawn(trim.right), height - drawn(trim.top)),
        'finished',
        'none',
        'centre',
      ),
      ...hingeMarks(hinge, width, height),
      ...(sizes === 'checked' ? checkedSizes(door, units, frame) : allSizes(door, units, frame)),
      ...seenFromFront(hinge, width, height + horn, sizes === 'checked' && horn > 0 ? 2 : 0.8),
      ...(sizes === 'checked' ? [] : nameInside(door)),
    ],
  };
}

/** A door's outer size as built without its horns, and its stiles' inner edges. */
interface Frame extends Built {
  readonly bead: number;
  readonly sides: { readonly left: number; readonly right: number };
  /** Where each stile ends: its horn over the height, longer or shorter where it was measured. */
  readonly tops: { readonly left: number; readonly right: number };
  readonly grooveDepth: number;
}

function frameOf(door: PlanDoor, units: Units): Frame {
  const { left, right } = partsOf(door).stiles;
  const { width: leftWidth, length, bead, grooveDepth } = profileOf(left);
  const horn = hornOf(door);
  const inner = leftWidth + drawn(door.values.sightWidth);
  return {
    width: inner + drawn(right.width),
    height: drawnAsBuilt(door.values, units).height,
    tops: { left: length - horn, right: drawn(right.length) - horn },
    horn,
    bead,
    grooveDepth,
    sides: { left: leftWidth, right: inner },
  };
}

/** The faces of all rails, from the bottom up. */
function railFaces(door: PlanDoor, { height, bead, sides: { left, right } }: Frame): Shape[] {
  const { bottom, mids, top } = partsOf(door).rails;
  const openings = openingsOf(door);
  let y = 0;
  const straight = [bottom, ...mids].map((rail, k) => {
    const face = railFace(left, right, y, drawn(rail.width), bead, k > 0);
    y = openings[k]?.to ?? y;
    return area(face, rail.part, 'wood');
  });
  return [...straight, area(topFace(top, left, right, y, height, bead), top.part, 'wood')];
}

/** What stands round one opening: its bead line, the groove's floor, the panel's edge; and its height. */
function openingShapes(
  door: PlanDoor,
  { bead, grooveDepth, sides: { left, right } }: Frame,
  { from, text }: { readonly from: number; readonly text: string },
  k: number,
  sizes: DoorSizes,
): Shape[] {
  const { rails, panels } = partsOf(door);
  const panel = panels[k];
  if (panel === undefined) return [];
  const sight = right - left;
  const head = k === panels.length - 1 ? headOfRail(rails.top) : null;
  const opening = shifted(openingOutline(sight, drawn(text), head), left, from);
  return [
    ...outlined(opening, bead, 'bead-line', 'fine'),
    ...outlined(opening, grooveDepth, 'groove-floor', 'fine'),
    ...outlined(opening, (drawn(panel.width) - sight) / 2, panel.part, 'hidden'),
    ...(sizes === 'built'
      ? [dimension('sightHeight', text, at(left, from), at(left, from + drawn(text)), 'right', 1)]
      : []),
  ];
}

/** Everything that a door measures as built. */
function allSizes(door: PlanDoor, units: Units, frame: Frame): Shape[] {
  const { width, height, horn, sides, tops } = frame;
  const { stiles, rails } = partsOf(door);
  const { bottom, top } = rails;
  const y = openingsOf(door).at(-1)?.to ?? 0;
  return [
    ...builtSizes(door, units, frame),
    dimension(
      'sightWidth',
      door.values.sightWidth,
      at(sides.left, -horn),
      at(sides.right, -horn),
      'below',
      1,
    ),
    dimension(
      'stileWidth',
      stiles.left.width,
      at(0, height + horn),
      at(sides.left, height + horn),
      'above',
      1,
    ),
    ...(horn === 0
      ? []
      : [dimension('stileLength', stiles.left.length, at(0, -horn), at(0, tops.left), 'left', 2)]),
    ...midRailWidths(door, width),
    dimension('bottomRail', bottom.width, at(width, 0), at(width, drawn(bottom.width)), 'right', 1),
    dimension('topRail', top.width, at(width, y), at(width, height), 'right', 1),
  ];
}

interface Built {
  readonly width: number;
  readonly height: number;
  readonly horn: number;
}

/** The door's outer sizes before it is trimmed, horns not counted. */
export function builtSizes(
  door: PlanDoor,
  units: Units,
  { width, height, horn }: Built,
  more: { readonly row: number; readonly keepName?: true } = { row: 2 },
): Shape[] {
  const { row, ...kept } = more;
  return [
    dimension('builtWidth', builtWidth(door, units), at(0, -horn), at(width, -horn), 'below', row, kept),
    dimension('builtHeight', builtHeight(door, units), at(0, 0), at(0, height), 'left', 1, kept),
  ];
}

/** Where they are the only sizes: nearest to the drawing, and always by name. */
export const KEPT = { row: 1, keepName: true } as const;

/** What is checked dry, and again before the glue sets: both diagonals, from corner to corner of the door without its horns. */
function checkedSizes(door: PlanDoor, units: Units, size: Built): Shape[] {
  const { width, height, horn } = size;
  const glue = stageOf(door, 'glue')?.settings;
  const across = (from: Point, to: Point, share: number) =>
    glue === undefined
      ? []
      : [
          dimension('diagonal', glue.diagonal, from, to, 'along', 0, {
            keepName: true,
            valueAt: at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share),
          }),
        ];
  return [
    ...builtSizes(door, units, size, KEPT),
    ...across(at(0, 0), at(width, height), 0.74),
    ...across(at(width, 0), at(0, height), 0.26),
    ...(horn === 0
      ? []
      : [
          label(
            say('drawing.horns-not-counted'),
            at(width / 2, height + horn),
            'horns',
            'small',
            'middle',
            Infinity,
            { shift: at(0, 0.9) },
          ),
        ]),
  ];
}

/** The width as built, as its parts make it: both stiles and what is between their sight edges. */
function builtWidth(door: PlanDoor, units: Units): string {
  const { left, right } = partsOf(door).stiles;
  const read = (value: string) => readPrinted(value, units);
  return printLength(sum(read(left.width), read(right.width), read(door.values.sightWidth)));
}

/** The height as built: a stile without its horns. */
function builtHeight(door: PlanDoor, units: Units): string {
  const horn = readPrinted(stageOf(door, 'trim')?.settings.horn ?? '0', units);
  return printLength(less(readPrinted(partsOf(door).stiles.left.length, units), horn, horn));
}

/** A straight rail's face between the stiles' shoulder lines, its beaded edges mitred. */
function railFace(left: number, right: number, y: number, width: number, b: number, both: boolean): Path {
  const low = both
    ? [at(left - b, y + b), at(left, y), at(right, y), at(right + b, y + b)]
    : [at(left - b, y), at(right + b, y)];
  return polygon([
    ...low,
    at(right + b, y + width - b),
    at(right, y + width),
    at(left, y + width),
    at(left - b, y + width - b),
  ]);
}

/** The top rail's face, its sight edge as its head runs; y is the sight edge of its flats. */
function topFace(top: PlanPart, left: number, right: number, y: number, height: number, b: number): Path {
  const sight = { start: at(0, 0), runs: headRunsBack(right - left, 0, headOfRail(top)) };
  return {
    start: at(left - b, y + b),
    runs: [
      { kind: 'line', to: at(left, y) },
      ...shifted(sight, left, y).runs,
      { kind: 'line', to: at(right + b, y + b) },
      { kind: 'line', to: at(right + b, height) },
      { kind: 'line', to: at(left - b, height) },
    ],
  };
}

/** A line so far outside a sight line; nothing where it would be the sight line itself. */
function outlined(sight: Outline, amount: number, role: string, pen: 'fine' | 'hidden'): Shape[] {
  const line = amount > 0 ? offset(sight, amount) : null;
  return line === null ? [] : [area(line, role, 'none', pen)];
}

function midRailWidths(door: PlanDoor, x: number): Shape[] {
  const openings = openingsOf(door);
  return partsOf(door).rails.mids.map((rail, k) => {
    const from = openings[k]?.to ?? 0;
    return dimension('midRail', rail.width, at(x, from), at(x, from + drawn(rail.width)), 'right', 1);
  });
}
