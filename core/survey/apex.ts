import type { Corner } from './quadrilateral.ts';

/**
 * The third corner of a triangle on the base from (0,0) to (base,0), above it: so far from the first, so far from the
 * second. Null where the three make no triangle.
 */
export function apex(base: number, fromFirst: number, fromSecond: number): Corner | null {
  const x = (base * base + fromFirst * fromFirst - fromSecond * fromSecond) / (2 * base);
  const square = fromFirst * fromFirst - x * x;
  return square <= 0 ? null : { x, y: Math.sqrt(square) };
}
