import type { FigureMark, Point } from './model.ts';
import type { Piece } from './pieces.ts';
import { wordsWidth } from './value-text.ts';

/** The room that words take in a figure, y down. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The rooms that marks of words take: the white ground of one that has it, and the letters of each without. */
export function wordBoxes(marks: readonly FigureMark[]): Box[] {
  return marks.flatMap((mark): Box[] => {
    if (mark.kind === 'text') return mark.name === undefined ? [lettersBox(mark)] : [];
    if (mark.role !== 'ground') return [];
    const points = [mark.path, ...mark.path.runs];
    const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
    return [{ left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }];
  });
}

function lettersBox(mark: Extract<FigureMark, { kind: 'text' }>): Box {
  const wide = wordsWidth(mark.text, mark.size, mark.bold);
  const [up, down] = [mark.size * 0.8 + 1, mark.size * 0.25];
  const before = mark.anchor === 'start' ? 0 : mark.anchor === 'end' ? wide : wide / 2;
  if (mark.turn === 0)
    return {
      left: mark.x - before - 1,
      right: mark.x - before + wide + 1,
      top: mark.y - up,
      bottom: mark.y + down,
    };
  // Turned by a quarter: read upwards.
  return {
    left: mark.x - up,
    right: mark.x + down,
    top: mark.y + before - wide - 1,
    bottom: mark.y + before + 1,
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
