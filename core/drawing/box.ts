import type { Point } from './model.ts';

/** A room in a figure, y down. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A straight line between two points. */
export interface Segment {
  readonly from: Point;
  readonly to: Point;
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
export function insideBox({ from, to }: Segment, box: Box): [number, number] | null {
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
export function along({ from, to }: Segment, share: number): Point {
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}
