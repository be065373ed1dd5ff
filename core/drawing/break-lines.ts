import { along, type Box, insideBox, touch } from './box.ts';
import type { FigurePath, FigureRun, PathStroke, Stroke } from './figure.ts';
import type { Point } from './model.ts';
import { boundsOf, type Piece, piecesOf } from './pieces.ts';
import { wordBoxes } from './word-box.ts';

/**
 * A figure’s strokes with every line broken where words stand, and the words last: none is struck through, whatever is
 * drawn after it. A line keeps its path, which its length is read from; what is drawn of it is the gapped one. `whole` are
 * the pens whose lines are never broken: those that one cuts along at full size.
 */
export function breakLines(strokes: readonly Stroke[], whole: readonly PathStroke['pen'][] = []): Stroke[] {
  const boxes = wordBoxes(strokes);
  const [lines, grounds, words] = [
    strokes.filter(
      (stroke) => stroke.kind === 'path' && stroke.role !== 'ground' && stroke.role !== 'fraction-bar',
    ),
    strokes.filter((stroke) => stroke.kind === 'path' && stroke.role === 'ground'),
    strokes.filter((stroke) => stroke.kind === 'text' || stroke.role === 'fraction-bar'),
  ];
  const broken = lines.map((stroke) => {
    if (stroke.kind === 'text' || stroke.pen === 'none' || whole.includes(stroke.pen)) return stroke;
    const gapped = brokenPath(stroke.path, boxes);
    return gapped === null ? stroke : { ...stroke, gapped };
  });
  return [...broken, ...grounds, ...words];
}

/** A path without what runs through the boxes; null when nothing does. */
function brokenPath(path: FigurePath, words: readonly Box[]): FigurePath | null {
  const pieces = piecesOf(path);
  const bounds = boundsOf(pieces);
  const boxes = words.filter((each) => touch(bounds, each));
  if (boxes.length === 0) return null;
  const kept = pieces.map((piece) => outside(piece, boxes));
  if (kept.every((each, k) => each.length === 1 && each[0] === pieces[k])) return null;
  return pathAlong(path.closed ? fromFirstGap(kept, pieces) : kept.flat(), path);
}

/** A closed outline begins behind its first gap, so that its corners stay whole. */
function fromFirstGap(kept: readonly (readonly Piece[])[], pieces: readonly Piece[]): Piece[] {
  const first = kept.findIndex((each, k) => each[0] !== pieces[k]);
  const order = [...kept.slice(first + 1), ...kept.slice(0, first + 1)].flat();
  const head = kept[first]?.at(-1);
  const ahead = head !== undefined && head.to === pieces[first]?.to ? [head] : [];
  return [...ahead, ...order.filter((each) => each !== ahead[0])];
}

/** The path along pieces, with a gap wherever one does not begin where the last one ends. */
function pathAlong(pieces: readonly Piece[], { x, y }: Point): FigurePath {
  const start = pieces[0]?.from ?? { x, y };
  let pen = start;
  const runs = pieces.flatMap((piece): FigureRun[] => {
    const gap = Math.hypot(piece.from.x - pen.x, piece.from.y - pen.y) > 1e-9;
    pen = piece.to;
    return [
      ...(gap ? [{ kind: 'move' as const, ...piece.from }] : []),
      piece.arc === undefined ? { kind: 'line', ...piece.to } : { ...piece.arc, ...piece.to, large: false },
    ];
  });
  return { ...start, runs, closed: false };
}

/** What of a piece lies outside all boxes; a stretch of an arc is left out whole. */
function outside(piece: Piece, boxes: readonly Box[]): Piece[] {
  const inside = boxes
    .map((box) => insideBox(piece, box))
    .filter((each) => each !== null)
    .toSorted(([a], [b]) => a - b);
  if (inside.length === 0) return [piece];
  if (piece.arc !== undefined) return [];
  const left: Piece[] = [];
  let from = 0;
  for (const [start, end] of [...inside, [1, 1] as const]) {
    if (start > from) left.push({ from: at(piece, from), to: at(piece, start) });
    from = Math.max(from, end);
  }
  return left;
}

function at(piece: Piece, share: number): Point {
  return share === 0 ? piece.from : share === 1 ? piece.to : along(piece, share);
}
