import type { Drawing, Path, Point, Run } from './model.ts';

/** The room that a drawing's shapes take, in the job's units, y up. */
export interface Bounds {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Between the outermost points of a drawing; words and signs count by their points alone. */
export function drawingBounds(drawing: Drawing): Bounds {
  const points = drawing.shapes.flatMap((shape) => {
    if (shape.kind === 'area') return pathPoints(shape.path);
    if (shape.kind === 'dimension') return [shape.from, shape.to];
    return [shape.at];
  });
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

/** Corners of a path, and the furthest points of its arcs. */
function pathPoints(path: Path): Point[] {
  let from = path.start;
  return [
    from,
    ...path.runs.flatMap((run) => {
      const begin = from;
      from = run.to;
      return run.kind === 'line' ? [run.to] : [run.to, ...furthest(begin, run)];
    }),
  ];
}

/** Where an arc goes furthest up, down, left and right, if it gets there. */
function furthest(begin: Point, { to, centre, clockwise }: Extract<Run, { kind: 'arc' }>): Point[] {
  const radius = Math.hypot(to.x - centre.x, to.y - centre.y);
  const [first, last] = clockwise ? [to, begin] : [begin, to];
  const start = Math.atan2(first.y - centre.y, first.x - centre.x);
  let sweep = Math.atan2(last.y - centre.y, last.x - centre.x) - start;
  if (sweep <= 0) sweep += 2 * Math.PI;
  return [0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5]
    .map((k) => k * Math.PI)
    .filter((angle) => angle > start && angle - start < sweep)
    .map((angle) => ({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) }));
}
