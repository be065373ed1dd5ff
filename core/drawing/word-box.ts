import type { Point, Stroke, TextStroke } from './model.ts';
import type { Piece } from './pieces.ts';
import { wordsWidth } from './value-text.ts';

/** The room that words take in a figure, y down. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The rooms that words take: the white ground of one that has it, and the letters of each without. */
export function wordBoxes(strokes: readonly Stroke[]): Box[] {
  return strokes.flatMap((stroke): Box[] => {
    if (stroke.kind === 'text') return stroke.name === undefined ? [lettersBox(stroke)] : [];
    if (stroke.role !== 'ground') return [];
    const points = [stroke.path, ...stroke.path.runs];
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    return [{ left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }];
  });
}

function lettersBox(stroke: TextStroke): Box {
  const wide = wordsWidth(stroke.text, stroke.size, stroke.bold);
  const [up, down] = [stroke.size * 0.8 + 1, stroke.size * 0.25];
  const before = stroke.anchor === 'start' ? 0 : stroke.anchor === 'end' ? wide : wide / 2;
  if (stroke.turn === 0)
    return {
      left: stroke.x - before - 1,
      right: stroke.x - before + wide + 1,
      top: stroke.y - up,
      bottom: stroke.y + down,
    };
  // Turned by a quarter: read upwards.
  return {
    left: stroke.x - up,
    right: stroke.x + down,
    top: stroke.y + before - wide - 1,
    bottom: stroke.y + before + 1,
  };
}

/** Have two boxes any room in common? */
export function overlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** Have two boxes any point in common, be one of them a mere line? */
export function touch(a: Box, b: Box): boolean {
  return a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
}

/** From where to where, in shares of its length, a straight piece runs inside a box; null when it does not. */
export function insideBox({ from, to }: Pick<Piece, 'from' | 'to'>, box: Box): [number, number] | null {
  let [first, last] = [0, 1];
  const sides = [
    [from.x, to.x - from.x, box.left, box.right],
    [from.y, to.y - from.y, box.top, box.bottom],
  ] as const;
  for (const [start, step, low, high] of sides) {
    if (Math.abs(step) < 1e-12) {
      if (start <= low || start >= high) return null;
      continue;
    }
    const [a, b] = [(low - start) / step, (high - start) / step];
    first = Math.max(first, Math.min(a, b));
    last = Math.min(last, Math.max(a, b));
  }
  return first < last ? [first, last] : null;
}

/** The point at a share of a piece’s length. */
export function along({ from, to }: Pick<Piece, 'from' | 'to'>, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}
