/** A point in true size, in the job's units: x to the right, y up. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** One stretch of an outline, from where the last one ended: straight, or an arc round a centre. Another curve is another kind. */
export type Run =
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'arc'; readonly to: Point; readonly centre: Point; readonly clockwise: boolean };

/**
 * A closed run of straight lines and circular arcs, in true size; where the last run does not end at the start, a line
 * closes it. Doubles, since arcs meet lines where no fraction is.
 */
export interface Outline {
  readonly start: Point;
  readonly runs: readonly Run[];
}

/** A run together with where it begins. */
export type Edge = Run & { readonly from: Point };

/** The straight distance between two points. */
export function distance(p: Point, q: Point): number {
  return Math.hypot(q.x - p.x, q.y - p.y);
}

/** The runs with their beginnings, the closing line among them. */
export function edgesOf({ start, runs }: Outline): Edge[] {
  const edges: Edge[] = [];
  let from = start;
  for (const run of runs) {
    edges.push({ ...run, from });
    from = run.to;
  }
  if (distance(from, start) > 0) edges.push({ kind: 'line', from, to: start });
  return edges;
}

/** An outline through these edges, each of which begins where the one before it ends. */
export function outlineOf(edges: readonly Edge[]): Outline {
  const start = edges[0]?.from ?? { x: 0, y: 0 };
  return {
    start,
    runs: edges.map((edge) =>
      edge.kind === 'line'
        ? { kind: 'line', to: edge.to }
        : { kind: 'arc', to: edge.to, centre: edge.centre, clockwise: edge.clockwise },
    ),
  };
}

/** The angle that an arc sweeps, in radians, over 0 and up to a full turn, whichever way it goes round. */
export function sweepOf(arc: Extract<Edge, { kind: 'arc' }>): number {
  const angle = ({ x, y }: Point) => Math.atan2(y - arc.centre.y, x - arc.centre.x);
  const turn = arc.clockwise ? angle(arc.from) - angle(arc.to) : angle(arc.to) - angle(arc.from);
  return turn > 0 ? turn : turn + 2 * Math.PI;
}
