import type { Path, Point, Shape } from '../drawing/model.ts';
import { area, at, label, rectangle, stroke } from '../drawing/shapes.ts';
import { moved } from '../outline/moved.ts';
import { say } from '../words/say.ts';
import { around, circle, feedArrow, turnArrow } from './feed-arrow.ts';
import type { CutterPlace, RouterCutter } from './router-cutter.ts';
import { tableEnds } from './router-table.ts';
import { member } from './stile-blank.ts';

/** How the edge that is cut runs, seen from above: straight along a fence; hollow as an arched rail’s, round as an arched panel’s. */
export type CutEdge = 'straight' | 'hollow' | 'round';

/** Where the view from above stands below the section, and how long a stretch of the piece it shows, in units of the drawing. */
const TOP = -0.64;
const LONG = 1.35;

/** How far a curved edge is drawn to rise, in units of the drawing. */
const RISE = 0.2;

/** Where the carrier ends: behind the deepest of a hollow edge; of another clear of what the cutter takes. */
function carrierEdge({ edge, unit }: Pick<CutterPlace, 'edge' | 'unit'>, runs: CutEdge): number {
  return edge - unit * (runs === 'hollow' ? RISE + 0.09 : runs === 'round' ? RISE + 0.2 : 0.32);
}

/** From where on a piece is seen beyond its carrier’s handles, if it is as wide as that. */
function seenFrom({ edge, unit }: Pick<CutterPlace, 'edge' | 'unit'>, left: number): number {
  return Math.max(left + unit * 0.3, edge - unit * 0.72);
}

/** The room that words have on the piece seen from above. */
export interface WordRoom {
  readonly x: number;
  readonly across: number;
  /** Its lower end, and how high it is. */
  readonly low: number;
  readonly high: number;
}

/**
 * The table from above, under its section and in line with it: the piece is fed away from the one who looks along the
 * section, the fence on the right; a cutter in a table turns anticlockwise from above, so that its teeth come against
 * the feed where they cut. How large all this is, is no setting’s.
 */
export function fromAbove(
  place: CutterPlace,
  cutter: RouterCutter,
  edge: CutEdge,
  carried: boolean,
  words: (room: WordRoom) => Shape[],
): Shape[] {
  const { unit } = place;
  const [top, bottom] = [unit * TOP, unit * (TOP - LONG)];
  const { left } = tableEnds(place);
  const arrow = left + unit * (carried ? 0.44 : 0.2);
  const free = carried ? carrierEdge(place, edge) : place.edge;
  return [
    label(say('drawing.from-above'), at(left, unit * (TOP + 0.2)), 'from-above', 'small', 'start'),
    ...(edge === 'straight'
      ? alongFence(place, cutter, top, bottom, carried)
      : roundBearing(place, edge === 'hollow', top, bottom, carried)),
    ...feedArrow(at(arrow, bottom + unit * 0.74), at(arrow, top - unit * 0.16), unit * 0.16),
    label(say('drawing.feed'), at(arrow + unit * 0.14, top - unit * 0.38), 'feed-name', 'small', 'start'),
    ...words({
      x: (left + free) / 2,
      across: free - left - unit * 0.16,
      low: bottom,
      high: unit * 0.72,
    }),
  ];
}

/** A straight piece along a fence that is open round the cutter; what of the cutter is under the piece is dashed. */
function alongFence(
  place: CutterPlace,
  cutter: RouterCutter,
  top: number,
  bottom: number,
  carried: boolean,
): Shape[] {
  const { edge, unit } = place;
  const { axis, bearing } = cutter;
  const { left, right } = tableEnds(place);
  const radius = Math.min(cutter.radius, unit * 0.42);
  const centre = at(axis, top - unit * 0.48);
  const gap = Math.max(radius * 0.9, unit * 0.3);
  const seen = seenFrom(place, left);
  const piece = carried
    ? rectangle(seen, bottom + unit * 0.06, edge, top - unit * 0.06)
    : moved(
        member(bottom, top, edge - left, { left: false, right: true }),
        ({ x, y }) => at(left + y, x),
        true,
      );
  return [
    area(rectangle(edge, centre.y + gap, right, top), 'above-fence', 'tool', 'fine'),
    area(rectangle(edge, bottom, right, centre.y - gap), 'above-fence', 'tool', 'fine'),
    area(circle(centre, radius), 'above-cutter', 'tool', 'fine'),
    area(piece, 'above-piece', 'wood'),
    ...(carried ? carrierAbove(place, { edge: 'straight', left, seen, top, bottom }) : []),
    area(behind(centre, radius, edge), 'above-cutter-behind', 'none', 'hidden'),
    area(circle(centre, bearing.radius), 'above-bearing', 'paper'),
    ...turnArrow(centre, radius * 0.5 + bearing.radius * 0.62, -50, 35, unit * 0.12),
  ];
}

/** The arc of a circle that lies left of x. */
function behind(centre: Point, radius: number, x: number): Path {
  const away = Math.acos(Math.max(-1, Math.min(1, (x - centre.x) / radius))) * (180 / Math.PI);
  return {
    start: around(centre, radius, away),
    runs: [{ kind: 'arc', to: around(centre, radius, 360 - away), centre, clockwise: false }],
    open: true,
  };
}

/** A carrier from above, over a piece that is seen beyond it: its two handles keep the hands on the far side. */
function carrierAbove(
  { unit, edge: at0 }: Pick<CutterPlace, 'edge' | 'unit'>,
  over: {
    readonly edge: CutEdge;
    readonly left: number;
    readonly seen: number;
    readonly top: number;
    readonly bottom: number;
  },
): Shape[] {
  const { left, seen, top, bottom } = over;
  const handles = [0.52, 0.9].map((share) => at(left + unit * 0.16, bottom + (top - bottom) * share));
  return [
    area(rectangle(left, bottom, carrierEdge({ edge: at0, unit }, over.edge), top), 'above-carrier', 'tool'),
    area(
      stroke(at(seen, bottom + unit * 0.06), at(seen, top - unit * 0.06)),
      'above-piece-behind',
      'none',
      'hidden',
    ),
    ...handles.map((handle) => area(circle(handle, unit * 0.1), 'above-handle', 'paper')),
  ];
}

/** A curved edge on the bearing, the pin on the infeed side; an arched rail, or a panel’s arched head, in a carrier. */
function roundBearing(
  { edge, unit, ...place }: CutterPlace,
  hollow: boolean,
  top: number,
  bottom: number,
  carried: boolean,
): Shape[] {
  const { left } = tableEnds({ edge, unit, ...place });
  const middle = (top + bottom) / 2;
  const half = (top - bottom) * 0.36;
  const rise = unit * RISE;
  const radius = (half * half + rise * rise) / (2 * rise);
  const turn = hollow ? 1 : -1;
  const centre = at(hollow ? edge - rise + radius : edge - radius, middle);
  const flats = hollow ? edge : edge - rise;
  const seen = carried ? seenFrom({ edge, unit }, left) : left;
  const on = (degrees: number, r: number) =>
    around(centre, radius - turn * r, hollow ? 180 - degrees : degrees);
  const [bearing, pin] = [on(12, unit * 0.15), on(-32, unit * 0.06)];
  const piece: Path = {
    start: at(seen, bottom + unit * 0.06),
    runs: [
      { kind: 'line', to: at(flats, bottom + unit * 0.06) },
      { kind: 'line', to: at(flats, middle - half) },
      { kind: 'arc', to: at(flats, middle + half), centre, clockwise: hollow },
      { kind: 'line', to: at(flats, top - unit * 0.06) },
      { kind: 'line', to: at(seen, top - unit * 0.06) },
    ],
  };
  return [
    area(circle(bearing, unit * 0.24), 'above-cutter', 'tool', 'fine'),
    area(piece, 'above-piece', 'wood'),
    ...(carried
      ? carrierAbove({ edge, unit }, { edge: hollow ? 'hollow' : 'round', left, seen, top, bottom })
      : []),
    area(circle(bearing, unit * 0.15), 'above-bearing', 'paper'),
    area(circle(pin, unit * 0.06), 'pin', 'ink'),
    label(say('drawing.pin'), at(pin.x + unit * 0.16, pin.y), 'pin-name', 'small', 'start'),
    ...turnArrow(bearing, unit * 0.36, -50, 50, unit * 0.12),
  ];
}
