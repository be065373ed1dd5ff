import type { Outline, Point, Run } from './outline.ts';

/** An outline with every point put elsewhere by a rule that keeps lengths: shifted, turned or, where it says so, mirrored. */
export function moved<Shape extends Outline>(
  outline: Shape,
  rule: (point: Point) => Point,
  mirrors = false,
): Shape {
  return {
    ...outline,
    start: rule(outline.start),
    runs: outline.runs.map((run): Run =>
      run.kind === 'line'
        ? { kind: 'line', to: rule(run.to) }
        : { ...run, to: rule(run.to), centre: rule(run.centre), clockwise: run.clockwise !== mirrors },
    ),
  };
}

/** An outline shifted to the right and up. */
export function shifted<Shape extends Outline>(outline: Shape, right: number, up: number): Shape {
  return moved(outline, ({ x, y }) => ({ x: x + right, y: y + up }));
}
