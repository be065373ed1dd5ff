import type { Path, Point, Shape } from '../drawing/model.ts';
import { area, at, label, polygon } from '../drawing/shapes.ts';
import type { Outline } from '../outline/outline.ts';
import { say } from '../words/say.ts';

/** Half the chord that an arc about a pivot has at this height; nothing where it does not come so high. */
export function halfChord(pivot: Point, radius: number, height: number): number {
  return Math.sqrt(Math.max(0, radius * radius - (height - pivot.y) ** 2));
}

/** The arc about a pivot over this height, from left to right. */
export function overPivot(pivot: Point, radius: number, height: number): Outline {
  const half = halfChord(pivot, radius, height);
  return {
    start: at(pivot.x - half, height),
    runs: [{ kind: 'arc', to: at(pivot.x + half, height), centre: pivot, clockwise: true }],
  };
}

/** What is between two arcs about a pivot over this height. */
export function between(pivot: Point, one: number, other: number, height: number): Path {
  const [out, back] = [overPivot(pivot, one, height), overPivot(pivot, other, height)];
  const [end] = back.runs;
  return {
    start: out.start,
    runs: [
      ...out.runs,
      { kind: 'line', to: end?.to ?? back.start },
      { kind: 'arc', to: back.start, centre: pivot, clockwise: false },
    ],
  };
}

/**
 * The band saw's blade where it enters an arc at the left, its kerf on the side of the waste: outside (1) or inside (-1);
 * and which way the piece, which turns about its pivot, is fed into it. Drawn in shares of the piece's size.
 */
export function trammelSaw(
  pivot: Point,
  radius: number,
  height: number,
  size: number,
  waste: 1 | -1,
): Shape[] {
  const start = overPivot(pivot, radius, height).start;
  const out = at((start.x - pivot.x) / radius, (start.y - pivot.y) / radius);
  // Along the arc, the way that the cut goes; the piece goes the other way.
  const on = at(out.y, -out.x);
  const point = (along: number, off: number) =>
    at(start.x + size * (on.x * along + out.x * off), start.y + size * (on.y * along + out.y * off));
  const kerf = 0.012 * waste;
  const off = -0.06 * waste;
  return [
    area(polygon([point(0, 0), point(0, kerf), point(-0.045, kerf), point(-0.045, 0)]), 'blade', 'tool'),
    label(say('drawing.blade'), point(-0.06, 0.01 * waste), 'blade-name', 'small', 'end'),
    area(
      polygon([
        point(0.03, off),
        point(0.07, off - 0.018),
        point(0.07, off - 0.006),
        point(0.13, off - 0.006),
        point(0.13, off + 0.006),
        point(0.07, off + 0.006),
        point(0.07, off + 0.018),
      ]),
      'feed',
      'ink',
      'fine',
    ),
    label(say('drawing.feed'), point(0.15, off), 'feed-name', 'small', 'start'),
  ];
}
