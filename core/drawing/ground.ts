import type { Box } from './box.ts';
import type { PathStroke, Point } from './model.ts';

/** A white ground, so that no line runs through what stands on it. */
export function ground({ left, right, top, bottom }: Box): PathStroke {
  return {
    kind: 'path',
    pen: 'none',
    fill: 'paper',
    role: 'ground',
    path: {
      x: left,
      y: top,
      closed: true,
      runs: [
        { kind: 'line', x: right, y: top },
        { kind: 'line', x: right, y: bottom },
        { kind: 'line', x: left, y: bottom },
      ],
    },
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
