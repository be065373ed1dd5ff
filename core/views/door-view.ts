import { sum } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import { printLength } from '../length/print-length.ts';
import { shifted } from '../outline/moved.ts';
import { offset } from '../outline/offset.ts';
import { openingOutline } from '../outline/opening-outline.ts';
import type { Outline } from '../outline/outline.ts';
import type { PlanDoor, PlanPart } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import { say } from '../words/say.ts';
import type { Drawing, Path, Point, Run, Shape } from '../drawing/model.ts';
import { drawn, profileOf, stageOf } from './plan-number.ts';
import { area, at, dimension, label, polygon, rectangle, stroke } from '../drawing/shapes.ts';
import { hingeMarks, nameInside, openingsOf, seenFromFront } from './door-marks.ts';
import type { Hinge } from '../job/hinge-of.ts';

/** Which sizes of a door are dimensioned: all of it as built, or only what is checked when it is glued up. */
export type DoorSizes = 'built' | 'glued';

/**
 * A door put together, as built, horns and all; from the front. x from its left edge, y from its bottom edge without
 * horns. Its parts add up to the sizes as built; the line inside is what stays after trimming. `hinge` is shown where
 * it is known.
 */
export function doorView(door: PlanDoor, units: Units, sizes: DoorSizes = 'built', hinge?: Hinge): Drawing {
  const find = (name: string) => door.parts.find(({ part }) => part === name);
  const [stile, bottom, top] = [find('stile-left'), find('rail-bottom'), find('rail-top')];
  const title = say('drawing.door', { door: door.door });
  if (stile === undefined || bottom === undefined || top === undefined) return { title, units, shapes: [] };
  const horn = drawn(door.stages.find(({ stage }) => stage === 'trim')?.settings.horn);
  const { width: s, length, bead: b } = profileOf(stile);
  const sight = drawn(door.values.sightWidth);
  const right = drawn(find('stile-right')?.width ?? stile.width);
  const width = sight + s + right;
  const height = length - 2 * horn;
  const shapes: Shape[] = [
    area(rectangle(0, -horn, s, height + horn), 'stile-left', 'wood'),
    area(rectangle(width - right, -horn, width, height + horn), 'stile-right', 'wood'),
  ];
  if (horn > 0)
    for (const y of [0, height])
      shapes.push(area(stroke(at(0, y), at(width, y)), 'trim-line', 'none', 'centre'));
  let y = 0;
  const openings = openingsOf(door);
  const rails: readonly (PlanPart | undefined)[] = [
    bottom,
    ...door.parts.filter(({ part }) => part.startsWith('rail-mid')),
  ];
  for (const [k, rail] of rails.entries()) {
    shapes.push(area(railFace(s, width - right, y, drawn(rail?.width), b, k > 0), rail?.part ?? '', 'wood'));
    y = openings[k]?.to ?? y;
  }
  shapes.push(area(topFace(top, s, width - right, y, height, b), 'rail-top', 'wood'));
  for (const [k, { from, text }] of openings.entries()) {
    const panel = find(openings.length === 1 ? 'panel' : `panel-${k + 1}`);
    if (panel === undefined) continue;
    const opening = shifted(sightLine(k === openings.length - 1 ? top : null, sight, drawn(text)), s, from);
    const depth = profileOf(stile).grooveDepth;
    shapes.push(
      ...outlined(opening, b, 'bead-line', 'fine'),
      ...outlined(opening, depth, 'groove-floor', 'fine'),
      ...outlined(opening, (drawn(panel.width) - sight) / 2, panel.part, 'hidden'),
    );
    if (sizes === 'built')
      shapes.push(...dimension('sightHeight', text, at(s, from), at(s, from + drawn(text)), 'right', 1));
  }
  const [side, end] = [drawn(door.values.trimEachSide), drawn(door.values.trimEachEnd)];
  shapes.push(area(rectangle(side, end, width - side, height - end), 'finished', 'none', 'centre'));
  return {
    title,
    units,
    shapes: [
      ...shapes,
      ...hingeMarks(hinge, width, height),
      ...(sizes === 'glued'
        ? gluedSizes(door, units, { width, height, horn })
        : [
            ...builtSizes(door, units, { width, height, horn }),
            ...dimension(
              'sightWidth',
              door.values.sightWidth,
              at(s, -horn),
              at(width - right, -horn),
              'below',
              1,
            ),
            ...dimension('stileWidth', stile.width, at(0, height + horn), at(s, height + horn), 'above', 1),
            ...(horn === 0
              ? []
              : dimension('stileLength', stile.length, at(0, -horn), at(0, height + horn), 'left', 2)),
            ...midRailWidths(door, drawn(bottom.width), width),
            ...dimension(
              'bottomRail',
              bottom.width,
              at(width, 0),
              at(width, drawn(bottom.width)),
              'right',
              1,
            ),
            ...dimension('topRail', top.width, at(width, y), at(width, height), 'right', 1),
          ]),
      ...seenFromFront(hinge, width, height + horn, sizes === 'glued' && horn > 0 ? 2 : 0.8),
      ...(sizes === 'glued' ? [] : nameInside(door)),
    ],
  };
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
  const { finishedWidth, finishedHeight, trimEachSide, trimEachEnd } = door.values;
  const { row, ...kept } = more;
  return [
    ...dimension(
      'builtWidth',
      built(finishedWidth, trimEachSide, units),
      at(0, -horn),
      at(width, -horn),
      'below',
      row,
      kept,
    ),
    ...dimension(
      'builtHeight',
      built(finishedHeight, trimEachEnd, units),
      at(0, 0),
      at(0, height),
      'left',
      1,
      kept,
    ),
  ];
}

/** Where they are the only sizes: nearest to the drawing, and always by name. */
export const KEPT = { row: 1, keepName: true } as const;

/** What is checked before the glue sets: both diagonals, from corner to corner of the door without its horns. */
function gluedSizes(door: PlanDoor, units: Units, size: Built): Shape[] {
  const { width, height, horn } = size;
  const diagonal = door.stages.find(({ stage }) => stage === 'glue')?.settings.diagonal;
  const across = (from: Point, to: Point, share: number) =>
    dimension('diagonal', diagonal, from, to, 'along', 0, {
      keepName: true,
      valueAt: at(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share),
    });
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

/** A size as built, exactly: the finished one and what comes off both sides; nothing where either is no length. */
function built(finished: string, trim: string, units: Units): string | undefined {
  const [size, each] = [parseLength(finished, units), parseLength(trim, units)];
  return size.ok && each.ok ? printLength(sum(size.value, each.value, each.value)) : undefined;
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

/** The top rail's face, hollowed by its arch where it has one; y is the sight edge of its flats. */
function topFace(top: PlanPart, left: number, right: number, y: number, height: number, b: number): Path {
  const arch = stageOf(top, 'arch')?.settings;
  const runs: Run[] = [{ kind: 'line', to: at(left, y) }];
  if (arch !== undefined) {
    const half = drawn(arch.chord) / 2;
    const middle = (left + right) / 2;
    runs.push(
      { kind: 'line', to: at(middle - half, y) },
      { kind: 'arc', to: at(middle + half, y), centre: at(middle, y - drawn(arch.pivot)), clockwise: true },
    );
  }
  runs.push(
    { kind: 'line', to: at(right, y) },
    { kind: 'line', to: at(right + b, y + b) },
    { kind: 'line', to: at(right + b, height) },
    { kind: 'line', to: at(left - b, height) },
  );
  return { start: at(left - b, y + b), runs };
}

/** The sight line of one opening, its bottom left corner at the origin; under the top rail with that rail's arch. */
function sightLine(above: PlanPart | null, width: number, height: number): Outline {
  const arch = above === null ? undefined : stageOf(above, 'arch')?.settings;
  return openingOutline(
    width,
    height,
    arch === undefined
      ? null
      : { chord: drawn(arch.chord), rise: drawn(arch.rise), pivot: drawn(arch.pivot) },
  );
}

/** A line so far outside a sight line; nothing where it would be the sight line itself. */
function outlined(sight: Outline, amount: number, role: string, pen: 'fine' | 'hidden'): Shape[] {
  const line = amount > 0 ? offset(sight, amount) : null;
  return line === null ? [] : [area(line, role, 'none', pen)];
}

function midRailWidths(door: PlanDoor, bottom: number, width: number): Shape[] {
  let y = bottom;
  return door.parts
    .filter(({ part }) => part.startsWith('rail-mid'))
    .flatMap((rail, k) => {
      const from = y + drawn(door.values.sightHeights[k]);
      y = from + drawn(rail.width);
      return dimension('midRail', rail.width, at(width, from), at(width, y), 'right', 1);
    });
}
