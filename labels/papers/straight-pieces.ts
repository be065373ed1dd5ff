import type { Figure } from '#core/drawing/figure.ts';
import type { Point } from '#core/drawing/model.ts';
import { arcCurves } from '../pdf/arc-curves.ts';
import type { Box } from '../pdf/box.ts';

/** A straight piece of a line, from its figure's lower left corner. */
export type StraightPiece = readonly [Point, Point];

/** Every line of a figure as straight pieces. */
export function straightPieces({ strokes, height }: Figure): StraightPiece[] {
  const up = ({ x, y }: Point): Point => ({ x, y: height - y });
  return strokes.flatMap((stroke) => {
    if (stroke.kind === 'text') return [];
    const { path } = stroke;
    let from: Point = { x: path.x, y: path.y };
    const points = path.runs.flatMap((run): Point[] => {
      const begin = from;
      from = run;
      return run.kind === 'arc' ? arcCurves(begin, run).map(([, , end]) => end) : [run];
    });
    const all = [path, ...points, ...(path.closed ? [path] : [])].map(up);
    return all.slice(1).map((to, k): StraightPiece => [all[k] ?? to, to]);
  });
}

/** Has a straight piece any point inside a box? (Liang and Barsky's clipping of a line against a rectangle.) */
export function crosses([a, b]: StraightPiece, box: Box): boolean {
  let [from, to] = [0, 1];
  const sides = [
    [a.x - b.x, a.x - box.x],
    [b.x - a.x, box.x + box.width - a.x],
    [a.y - b.y, a.y - box.y],
    [b.y - a.y, box.y + box.height - a.y],
  ] as const;
  for (const [step, room] of sides) {
    if (step === 0) {
      if (room < 0) return false;
    } else if (step < 0) from = Math.max(from, room / step);
    else to = Math.min(to, room / step);
  }
  return from <= to;
}
