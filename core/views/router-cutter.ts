import type { Path, Run } from '../drawing/model.ts';
import { at } from '../drawing/shapes.ts';
import { moved } from '../outline/moved.ts';

/** A cutter in the router table, seen along the feed, with the bearing on top of it that runs on the piece. */
export interface RouterCutter {
  readonly outline: Path;
  /** Where its axis stands. */
  readonly axis: number;
  /** From its axis to the tips of its teeth, where it is widest. */
  readonly radius: number;
  /** How far right it is drawn: whole where it is small, else broken off beyond its bearing. */
  readonly seenTo: number;
  readonly bearing: {
    readonly radius: number;
    readonly low: number;
    readonly high: number;
  };
  /** How wide its table insert is open on each side of the axis. */
  readonly opening: number;
}

/** Where a cutter works: the piece lies on the table at y = 0, the edge that the bearing runs on at x = `edge`; `unit` is what the machine is drawn by. */
export interface CutterPlace {
  readonly edge: number;
  readonly thickness: number;
  readonly unit: number;
}

/** What no plan says of a cutter is drawn by the piece: the radii of its bearing and of its shank, and how far down it is seen. */
const BEARING = 0.22;
const SHANK = 0.13;
const DOWN = -0.5;
const BODY = -0.1;

/** The quarter round that leaves a bead of this size so far below the front as the fillet is high. */
export function beadCutter(place: CutterPlace, bead: number, fillet: number): RouterCutter {
  const { edge, unit } = place;
  const wall = fillet + bead;
  const inner = edge - bead;
  const body = Math.min(unit * BODY, -unit * 0.02);
  return cutterOf(place, { wide: bead, top: wall, opening: bead }, at(edge, wall), [
    { kind: 'arc', to: at(inner, fillet), centre: at(inner, wall), clockwise: true },
    { kind: 'line', to: at(inner, body) },
    { kind: 'line', to: at(edge, body * 2) },
  ]);
}

/** The disc that slots a groove so wide and deep, so high above the table. */
export function slotCutter(place: CutterPlace, wall: number, width: number, depth: number): RouterCutter {
  const { edge, unit } = place;
  const shank = edge + unit * (BEARING - SHANK);
  return cutterOf(
    place,
    { wide: depth, top: wall + width, opening: SHANK * unit * 0.5 - BEARING * unit },
    at(edge - depth, wall + width),
    [
      { kind: 'line', to: at(edge - depth, wall) },
      { kind: 'line', to: at(shank, wall) },
    ],
  );
}

/** The flat cutter that takes a band so wide off the face below, so deep. */
export function raisingCutter(place: CutterPlace, band: number, depth: number): RouterCutter {
  const { edge, unit } = place;
  const inner = edge - band;
  return cutterOf(place, { wide: band, top: depth, opening: band }, at(inner, depth), [
    { kind: 'line', to: at(inner, unit * BODY) },
    { kind: 'line', to: at(edge - unit * 0.2, unit * BODY * 2) },
  ]);
}

/** Wider than this, in units of the drawing, a cutter is broken off beyond its bearing. */
const WHOLE = 0.75;

/** A cutter, both of its sides alike: what is given is the outline of the one that cuts, from its top down to its shank. */
function cutterOf(
  { edge, thickness, unit }: CutterPlace,
  { wide, top, opening }: { readonly wide: number; readonly top: number; readonly opening: number },
  start: Path['start'],
  down: readonly Run[],
): RouterCutter {
  const bearing = unit * BEARING;
  const axis = edge + bearing;
  const shank = unit * SHANK;
  const foot = down.at(-1)?.to.y ?? 0;
  const left: Path = {
    start,
    runs: [
      ...down,
      { kind: 'line', to: at(axis - shank, foot) },
      { kind: 'line', to: at(axis - shank, unit * DOWN) },
    ],
  };
  const radius = bearing + wide;
  const whole = radius <= unit * WHOLE;
  const broken = axis + bearing * 1.6;
  const right = whole
    ? backwards(moved(left, ({ x, y }) => at(2 * axis - x, y), true))
    : brokenSide(axis + shank, unit * DOWN, broken, foot, top);
  return {
    outline: { start, runs: [...left.runs, ...right] },
    axis,
    radius,
    seenTo: whole ? axis + radius : broken,
    bearing: { radius: bearing, low: top, high: Math.min(thickness * 0.96, top + unit * 0.32) },
    opening: bearing + opening + unit * 0.07,
  };
}

/** The other side of a wide cutter: up its shank and out to a break. */
function brokenSide(shank: number, down: number, to: number, low: number, high: number): Run[] {
  const tooth = (high - low) * 0.12;
  return [
    at(shank, down),
    at(shank, low),
    at(to, low),
    at(to + tooth, low + (high - low) * 0.35),
    at(to - tooth, low + (high - low) * 0.65),
    at(to, high),
  ].map((point): Run => ({ kind: 'line', to: point }));
}

/** The runs of a path from its end back to its start, with a line to its end first. */
function backwards({ start, runs }: Path): Run[] {
  const points = [start, ...runs.map(({ to }) => to)];
  return [...runs, null].reduceRight<Run[]>((back, run, k) => {
    const to = points[run === null ? points.length - 1 : k] ?? start;
    return [
      ...back,
      run?.kind === 'arc'
        ? { kind: 'arc', to, centre: run.centre, clockwise: !run.clockwise }
        : { kind: 'line', to },
    ];
  }, []);
}
