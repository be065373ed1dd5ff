import type { Box } from './box.ts';
import type { Dimension, Point } from './model.ts';
import type { FigurePath, PathStroke } from './figure.ts';
import { boxPath, pathThrough } from './figure-path.ts';
import type { ValueTag } from './value-text.ts';

/** How the rows of dimensions stand: their pitch, the height of their type, and how far the rows at the sides stand out. */
export interface Rows {
  readonly pitch: number;
  readonly text: number;
  readonly onLeft: readonly number[];
  readonly onRight: readonly number[];
}

/** A dimension where it stands in its figure. */
export interface StandingDimension {
  readonly shape: Dimension;
  readonly upright: boolean;
  /** Its points, which its extension lines come from. */
  readonly points: readonly [Point, Point];
  /** The ends of its line. */
  readonly ends: readonly [Point, Point];
  /** Where the member is broken between them. */
  readonly broken: Point | undefined;
}

/** Half the width of a tick, in heights of the type. */
export const TICK = 0.22;

/** Which dimension a stroke belongs to. */
export function tagOf({ name, value, place }: Dimension): ValueTag {
  return { name, value, ...(place === undefined ? {} : { place }) };
}

/** Where a dimension stands: along its own points, or in its row beyond the frame of the drawing. */
export function standing(
  shape: Dimension,
  place: (point: Point) => Point,
  frame: Box,
  rows: Rows,
): StandingDimension {
  const upright = shape.side === 'left' || shape.side === 'right';
  const points: readonly [Point, Point] = [place(shape.from), place(shape.to)];
  const level = levelOf(shape, frame, rows);
  const onLevel = ({ x, y }: Point): Point => (upright ? { x: level, y } : { x, y: level });
  const broken = shape.brokenAt === undefined ? undefined : place({ x: shape.brokenAt, y: shape.brokenAt });
  return {
    shape,
    upright,
    points,
    ends: shape.side === 'along' ? points : [onLevel(points[0]), onLevel(points[1])],
    broken: broken === undefined ? undefined : onLevel(broken),
  };
}

function levelOf({ side, row }: Dimension, frame: Box, { pitch, text, onLeft, onRight }: Rows): number {
  if (side === 'above') return frame.top - row * pitch + text * 0.2;
  if (side === 'below') return frame.bottom + row * pitch - text * 0.2;
  if (side === 'left') return frame.left - (onLeft[row - 1] ?? 0);
  return frame.right + (onRight[row - 1] ?? 0);
}

/** Its extension lines; none where it stands on its own points. */
export function extensions({ shape, points, ends }: StandingDimension): PathStroke[] {
  if (shape.side === 'along') return [];
  return [
    straight(points[0], ends[0], 'fine', 'extension'),
    straight(points[1], ends[1], 'fine', 'extension'),
  ];
}

/** The dimension line itself, with a break where a stretch of the member is left out. */
export function lineOf({ shape, ends, broken }: StandingDimension, text: number): PathStroke {
  const line = straight(...ends, 'dimension', 'dimension');
  if (broken === undefined) return { ...line, ...tagOf(shape) };
  return { ...line, path: brokenLine(ends, broken, text * 0.4), ...tagOf(shape), broken: true };
}

/** A tick at each end of the line; a square at the datum. */
export function ticks({ shape, ends }: StandingDimension, text: number): PathStroke[] {
  const r = text * TICK;
  return ends.map(({ x, y }, k) =>
    k === 0 && shape.datum === true
      ? { kind: 'path', pen: 'datum', fill: 'ink', role: 'datum', path: boxPath(x - r, y - r, x + r, y + r) }
      : straight({ x: x - r, y: y + r }, { x: x + r, y: y - r }, 'dimension', 'tick'),
  );
}

function straight(from: Point, to: Point, pen: PathStroke['pen'], role: string): PathStroke {
  return { kind: 'path', pen, fill: 'none', role, path: pathThrough([from, to]) };
}

/** A line with a break in it, twice across and back. */
function brokenLine([from, to]: readonly [Point, Point], at: Point, r: number): FigurePath {
  const long = Math.max(1e-9, Math.hypot(to.x - from.x, to.y - from.y));
  const [ux, uy] = [(to.x - from.x) / long, (to.y - from.y) / long];
  const step = (along: number, off: number): Point => ({
    x: at.x + r * (ux * along - uy * off),
    y: at.y + r * (uy * along + ux * off),
  });
  return pathThrough([from, step(-1, 0), step(-0.5, -1.2), step(0.5, 1.2), step(1, 0), to]);
}
