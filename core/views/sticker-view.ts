import type { PlanDoor, PlanPart } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';
import type { StickerPlace } from '../stickers/sticker-place.ts';
import { partName } from '../telling/names.ts';
import { say } from '../words/say.ts';
import type { Drawing, Path, Point, Shape } from '../drawing/model.ts';
import { panelOutline } from './panel-outline.ts';
import { drawn } from './drawn.ts';
import { profileOf } from './profile.ts';
import { stageOf } from '../plan/stage-of.ts';
import { hornOf, topHornOf } from './horn.ts';
import { headOfRail, railOutline, shoulderOf, sightEdges, tenonWaste } from './rail-blank.ts';
import { mortisesFromBottom } from './stile-blank.ts';
import { readPart } from '../plan/part-name.ts';
import { area, at, polygon, rectangle, stroke, symbol } from '../drawing/shapes.ts';

/** How a part is shown on its own sticker. */
export interface StickerViewOptions {
  readonly units: Units;
  /** Width over height of the room: a longer part is shortened along its length, and only so. */
  readonly aspect: number;
  readonly place: StickerPlace;
}

/**
 * A part from the back, lying as its sticker is read: a stile with its top end to the right, rails and panels upright.
 * Black is the sticker; solid lines are what one sees or will cut, broken ones what lies behind: the bead, the panel's tongue. The arrow points to
 * the door's top; the joiner's marks stand at the face edge and, on the far side, on the face.
 */
export function stickerView(door: PlanDoor, part: PlanPart, options: StickerViewOptions): Drawing {
  const shapes = backOf(door, part, options.place, options.units);
  const upright = readPart(part).kind === 'panel';
  const [high, long] = upright
    ? [drawn(part.length), drawn(part.width)]
    : [drawn(part.width), drawn(part.length)];
  const squeeze = Math.min(1, (options.aspect * high) / long);
  return {
    title: say('drawing.part-back', { part: partName(part.part), door: door.door }),
    units: options.units,
    shapes: squeeze === 1 ? shapes : shapes.map((each) => squeezed(each, squeeze)),
  };
}

function backOf(door: PlanDoor, part: PlanPart, place: StickerPlace, units: Units): Shape[] {
  switch (readPart(part).kind) {
    case 'stile':
      return stileBack(door, part, place, units);
    case 'rail':
      return railBack(part, place);
    case 'panel':
      return panelBack(part, place);
  }
}

/** A left stile has its sight edge above, a right one below. */
function stileBack(door: PlanDoor, part: PlanPart, place: StickerPlace, units: Units): Shape[] {
  const { width, length, bead } = profileOf(part);
  const above = readPart(part).at === 'left';
  const y = (fromSight: number) => (above ? width - fromSight : fromSight);
  const horn = hornOf(door);
  const top = topHornOf(door, part, units);
  const shapes: Shape[] = [area(rectangle(0, 0, length, width), 'outline', 'wood')];
  for (const x of [...(horn > 0 ? [horn] : []), ...(top > 0 ? [length - top] : [])])
    shapes.push(area(stroke(at(x, 0), at(x, width)), 'trim-line', 'none', 'fine'));
  const mortises = mortisesFromBottom(part);
  for (const { place: name, from, to, depth } of mortises)
    shapes.push(area(rectangle(from, y(0), to, y(depth)), 'mortise', 'section', 'fine', name));
  if (bead > 0) shapes.push(beadLine(0, length, y(bead)));
  const outer = drawnPlace(place);
  shapes.push(
    stickerAt(
      outer.along,
      above ? outer.across : width - outer.across - outer.wide,
      outer.long,
      outer.wide,
      place,
    ),
  );
  const taken = mortises.map((each): [number, number] => [each.from, each.to]);
  const [from, to] = largestGap([...taken, [outer.along, outer.along + outer.long]], horn, length - top);
  return [
    ...shapes,
    ...faceMarks(from + (to - from) * 0.3, above ? [width] : [0], width / 2),
    symbol('arrow-right', at(from + (to - from) * 0.75, width / 2), 'to-top'),
  ];
}

function railBack(part: PlanPart, place: StickerPlace): Shape[] {
  const { width, length, bead } = profileOf(part);
  const shoulder = shoulderOf(part);
  const edges = sightEdges(part);
  const head = headOfRail(part);
  const shapes: Shape[] = [area(railOutline(part), 'outline', 'wood')];
  for (const x of [shoulder, length - shoulder])
    shapes.push(area(stroke(at(x, 0), at(x, width)), 'shoulder', 'none', 'fine'));
  for (const end of ['left', 'right'] as const)
    for (const waste of tenonWaste(part, end, edges))
      shapes.push(area(waste, 'tenon-waste', 'section', 'fine'));
  for (const edge of bead > 0 && head === null ? edges : [])
    shapes.push(beadLine(shoulder, length - shoulder, edge === 'above' ? width - bead : bead));
  const sized = drawnPlace(place);
  const fromOuter = edges.includes('below') ? width - sized.across - sized.wide : sized.across;
  shapes.push(stickerAt(sized.along, fromOuter, sized.long, sized.wide, place));
  const free = shoulder + (Math.max(sized.along, shoulder) - shoulder) / 2;
  const sights = edges.map((edge) => (edge === 'above' ? width : 0));
  return [
    ...shapes,
    ...faceMarks(free, sights, (width + (head?.rise ?? 0)) / 2),
    symbol('arrow-up', at(length - free, width * (edges.includes('below') ? 0.6 : 0.4)), 'to-top'),
  ];
}

function panelBack(part: PlanPart, place: StickerPlace): Shape[] {
  const [width, high] = [drawn(part.width), drawn(part.length)];
  const head = stageOf(part, 'cutout')?.settings;
  const band = drawn(stageOf(part, 'raise')?.settings.band ?? '0');
  const top = head === undefined ? high : drawn(head.sideHeight);
  const shapes: Shape[] = [area(panelOutline(part), 'outline', 'wood')];
  if (band > 0) {
    const inside = [
      at(band, top - band),
      at(band, band),
      at(width - band, band),
      at(width - band, top - band),
    ];
    shapes.push(
      area(
        head === undefined
          ? polygon(inside)
          : { start: at(band, top - band), runs: polygon(inside).runs, open: true },
        'band',
        'none',
        'fine',
      ),
    );
  }
  const sized = drawnPlace(place);
  shapes.push(stickerAt(sized.across, sized.along, sized.wide, sized.long, place));
  const between = Math.min(sized.along + sized.long + (top - sized.along - sized.long) / 2, top * 0.9);
  return [
    ...shapes,
    symbol('face-side', at(width / 2, sized.along / 2), 'face-side'),
    symbol('arrow-up', at(width / 2, between), 'to-top'),
  ];
}

function beadLine(from: number, to: number, y: number): Shape {
  return area(stroke(at(from, y), at(to, y)), 'bead-line', 'none', 'hidden');
}

/** The joiner's marks: the face edge's at each sight edge, the face's on the far side. */
function faceMarks(x: number, sights: readonly number[], middle: number): Shape[] {
  return [
    ...sights.map((y) => symbol(y === 0 ? 'face-edge-below' : 'face-edge', at(x, y), 'face-edge')),
    symbol('face-side', at(x, middle), 'face-side'),
  ];
}

/** The longest stretch between two lengths that nothing takes up. */
function largestGap(taken: readonly [number, number][], from: number, to: number): [number, number] {
  let best: [number, number] = [from, from];
  let begin = from;
  for (const [start, end] of [...taken.toSorted((a, b) => a[0] - b[0]), [to, to] as const]) {
    if (start - begin > best[1] - best[0]) best = [begin, start];
    begin = Math.max(begin, end);
  }
  return best;
}

function stickerAt(x: number, y: number, long: number, wide: number, { state }: StickerPlace): Shape {
  const path = rectangle(x, y, x + long, y + wide);
  return area(path, 'sticker', state === 'none' ? 'none' : 'ink', state === 'none' ? 'hidden' : 'fine');
}

function drawnPlace({ along, across, long, wide }: StickerPlace) {
  return { along: along.valueOf(), across: across.valueOf(), long: long.valueOf(), wide: wide.valueOf() };
}

/** A shape with its lengths along x made shorter; arcs become short straight lines, since a shortened circle is none. */
function squeezed(shape: Shape, by: number): Shape {
  const move = ({ x, y }: Point) => at(x * by, y);
  if (shape.kind === 'dimension') return { ...shape, from: move(shape.from), to: move(shape.to) };
  if (shape.kind !== 'area') return { ...shape, at: move(shape.at) };
  return { ...shape, path: squeezedPath(shape.path, move) };
}

const STEPS = 24;

function squeezedPath(path: Path, move: (point: Point) => Point): Path {
  let from = path.start;
  const runs = path.runs.flatMap((run) => {
    const begin = from;
    from = run.to;
    if (run.kind === 'line') return [{ kind: 'line' as const, to: move(run.to) }];
    const { centre } = run;
    const radius = Math.hypot(begin.x - centre.x, begin.y - centre.y);
    const start = Math.atan2(begin.y - centre.y, begin.x - centre.x);
    let turn = Math.atan2(run.to.y - centre.y, run.to.x - centre.x) - start;
    if (run.clockwise && turn > 0) turn -= 2 * Math.PI;
    if (!run.clockwise && turn < 0) turn += 2 * Math.PI;
    return Array.from({ length: STEPS }, (_, k) => {
      const angle = start + (turn * (k + 1)) / STEPS;
      const to = at(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
      return { kind: 'line' as const, to: move(to) };
    });
  });
  return { ...path, start: move(path.start), runs };
}
