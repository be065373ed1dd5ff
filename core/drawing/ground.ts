import type { Box } from './box.ts';
import type { PathStroke } from './figure.ts';
import { boxPath } from './figure-path.ts';
import type { Point } from './model.ts';

/** A white ground, so that no line runs through what stands on it. */
export function ground({ left, right, top, bottom }: Box): PathStroke {
  return {
    kind: 'path',
    pen: 'none',
    fill: 'paper',
    role: 'ground',
    path: boxPath(left, top, right, bottom),
  };
}

/** The white ground of level words: their middle at a point of the base line, a little wider than they are. */
export function groundOf({ x, y }: Point, wide: number, size: number): PathStroke {
  return ground({
    left: x - wide / 2 - 2,
    right: x + wide / 2 + 2,
    top: y - size * 0.95,
    bottom: y + size * 0.3,
  });
}
