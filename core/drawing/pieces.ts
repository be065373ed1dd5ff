import type { Box, Segment } from './box.ts';
import type { FigurePath, FigureRun } from './figure.ts';
import type { Point } from './model.ts';

/** One straight piece of a path, or a short stretch of one of its arcs. */
export interface Piece extends Segment {
  /** The arc that it is a stretch of. */
  readonly arc?: Extract<FigureRun, { kind: 'arc' }>;
}

/** The box that pieces lie in, y down; their ends alone, which a stretch of an arc hardly leaves. */
export function boundsOf(pieces: readonly Segment[]): Box {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { from, to } of pieces) {
    left = Math.min(left, from.x, to.x);
    right = Math.max(right, from.x, to.x);
    top = Math.min(top, from.y, to.y);
    bottom = Math.max(bottom, from.y, to.y);
  }
  return { left, right, top, bottom };
}

/** So many stretches of an arc are looked at one by one. */
const STRETCHES = 48;

/** A path in pieces, from its start on, its closing line among them. */
export function piecesOf(path: FigurePath): Piece[] {
  let from: Point = { x: path.x, y: path.y };
  const pieces = path.runs.flatMap((run): Piece[] => {
    const begin = from;
    from = { x: run.x, y: run.y };
    if (run.kind === 'move') return [];
    return run.kind === 'line' ? [{ from: begin, to: from }] : stretches(begin, run);
  });
  const open = Math.hypot(from.x - path.x, from.y - path.y) > 1e-9;
  return path.closed && open ? [...pieces, { from, to: { x: path.x, y: path.y } }] : pieces;
}

function stretches(from: Point, arc: Extract<FigureRun, { kind: 'arc' }>): Piece[] {
  const [dx, dy] = [arc.x - from.x, arc.y - from.y];
  const chord = Math.max(1e-9, Math.hypot(dx, dy));
  const away =
    Math.sqrt(Math.max(0, arc.radius * arc.radius - (chord * chord) / 4)) *
    (arc.large === arc.sweep ? -1 : 1);
  const centre = {
    x: (from.x + arc.x) / 2 - (away * dy) / chord,
    y: (from.y + arc.y) / 2 + (away * dx) / chord,
  };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  let turn = Math.atan2(arc.y - centre.y, arc.x - centre.x) - start;
  if (arc.sweep && turn < 0) turn += 2 * Math.PI;
  if (!arc.sweep && turn > 0) turn -= 2 * Math.PI;
  const point = (k: number): Point =>
    k === 0
      ? from
      : k === STRETCHES
        ? { x: arc.x, y: arc.y }
        : {
            x: centre.x + arc.radius * Math.cos(start + (turn * k) / STRETCHES),
            y: centre.y + arc.radius * Math.sin(start + (turn * k) / STRETCHES),
          };
  return Array.from({ length: STRETCHES }, (_, k) => ({ from: point(k), to: point(k + 1), arc }));
}
