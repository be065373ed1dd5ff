import type { Figure, FigurePath } from '#core/drawing/figure.ts';
import { newDocument } from '#labels/pdf/typeface.ts';

const { faces } = await newDocument('measure');

/** A box in a figure's units, y down. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Every text of a figure with the box that its letters fill, by the typeface's own widths. */
export function textsOf(figure: Figure) {
  return figure.strokes.flatMap((stroke) => {
    if (stroke.kind !== 'text') return [];
    const wide = faces[stroke.bold ? 'bold' : 'regular'].width(stroke.text, stroke.size);
    if (stroke.turn === 90)
      return [
        {
          ...stroke,
          left: stroke.x - stroke.size * 0.7,
          right: stroke.x,
          top: stroke.y - wide / 2,
          bottom: stroke.y + wide / 2,
        },
      ];
    const left = stroke.x - (stroke.anchor === 'start' ? 0 : stroke.anchor === 'end' ? wide : wide / 2);
    return [{ ...stroke, left, right: left + wide, top: stroke.y - stroke.size * 0.7, bottom: stroke.y }];
  });
}

type Piece = readonly [number, number, number, number];

/** The straight pieces of every drawn line of a figure, arcs in short ones; the bar of a fraction is part of its text. */
export function linesOf(figure: Figure): { readonly role: string; readonly pieces: readonly Piece[] }[] {
  return figure.strokes.flatMap((stroke) =>
    stroke.kind === 'path' && stroke.pen !== 'none' && stroke.role !== 'fraction-bar'
      ? [{ role: stroke.role, pieces: piecesOf(stroke.gapped ?? stroke.path) }]
      : [],
  );
}

function piecesOf(path: FigurePath): Piece[] {
  let from = { x: path.x, y: path.y };
  const pieces: Piece[] = [];
  const to = (x: number, y: number) => {
    pieces.push([from.x, from.y, x, y]);
    from = { x, y };
  };
  for (const run of path.runs) {
    if (run.kind === 'move') from = { x: run.x, y: run.y };
    else if (run.kind === 'line') to(run.x, run.y);
    else for (const [x, y] of alongArc(from, run)) to(x, y);
  }
  if (path.closed) to(path.x, path.y);
  return pieces;
}

/** Points along an arc as SVG has it, by the formula of its specification. */
function alongArc(
  { x: x1, y: y1 }: { readonly x: number; readonly y: number },
  {
    x: x2,
    y: y2,
    radius,
    large,
    sweep,
  }: { x: number; y: number; radius: number; large: boolean; sweep: boolean },
): [number, number][] {
  const chord = Math.hypot(x2 - x1, y2 - y1);
  const off = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4)) * (large === sweep ? -1 : 1);
  const [cx, cy] = [(x1 + x2) / 2 - (off * (y2 - y1)) / chord, (y1 + y2) / 2 + (off * (x2 - x1)) / chord];
  const start = Math.atan2(y1 - cy, x1 - cx);
  let turn = Math.atan2(y2 - cy, x2 - cx) - start;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  return Array.from({ length: 48 }, (_, k) => {
    const angle = start + (turn * (k + 1)) / 48;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  });
}

/** Does a straight piece run through a box? */
export function runsThrough([x1, y1, x2, y2]: Piece, { left, right, top, bottom }: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, step, low, high] of [
    [x1, x2 - x1, left, right],
    [y1, y2 - y1, top, bottom],
  ] as const) {
    if (step === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [a, b] = [(low - start) / step, (high - start) / step];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  return from < to;
}
