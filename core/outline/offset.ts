import { type Carrier, meet } from './meet.ts';
import { distance, type Edge, edgesOf, type Outline, outlineOf, type Point, sweepOf } from './outline.ts';
import { signedArea } from './outline-area.ts';

/**
 * The outline that lies so far outside this one everywhere, in the job's units; inside it for an amount under 0. Lines
 * stay parallel, arcs concentric; corners are trimmed or extended to where the moved edges meet, and an edge that is
 * left no length is dropped. Null where nothing is left, or where two neighbours no longer meet. Sight line, bead line,
 * groove floor and panel edge of an opening are offsets of one another.
 */
export function offset(outline: Outline, amount: number): Outline | null {
  if (amount === 0) return outline;
  const area = signedArea(outline);
  const outwards = area < 0 ? -amount : amount;
  let kept: Moved[] = [];
  for (const edge of edgesOf(outline)) {
    const carrier = carrierOf(edge, outwards);
    if (carrier !== null) kept.push({ edge, carrier });
  }
  for (;;) {
    const edges = joined(kept);
    if (edges === null) return null;
    const left = kept.filter(({ edge }, k) => !turnedBack(edge, edges[k]));
    if (left.length < kept.length) {
      kept = left;
      continue;
    }
    const moved = outlineOf(edges);
    return signedArea(moved) * area > 0 ? moved : null;
  }
}

interface Moved {
  readonly edge: Edge;
  readonly carrier: Carrier;
}

/** What an edge lies on once it is moved to its right; null where an arc is left no radius, or a line has no length. */
function carrierOf(edge: Edge, right: number): Carrier | null {
  if (edge.kind === 'arc') {
    const radius = distance(edge.centre, edge.to) + (edge.clockwise ? -right : right);
    return radius > 0 ? { kind: 'circle', centre: edge.centre, radius } : null;
  }
  const long = distance(edge.from, edge.to);
  if (long === 0) return null;
  const along = { x: (edge.to.x - edge.from.x) / long, y: (edge.to.y - edge.from.y) / long };
  return {
    kind: 'line',
    through: { x: edge.from.x + along.y * right, y: edge.from.y - along.x * right },
    along,
  };
}

/** The moved edges, each from where it meets the one before it to where it meets the next; null where two do not meet. */
function joined(moved: readonly Moved[]): Edge[] | null {
  if (moved.length < 2) return null;
  const corners: Point[] = [];
  for (const [k, { edge, carrier }] of moved.entries()) {
    const before = moved[(k + moved.length - 1) % moved.length];
    if (before === undefined) return null;
    const corner = meet(before.carrier, carrier, midway(before.edge.to, edge.from));
    if (corner === null) return null;
    corners.push(corner);
  }
  return moved.map(({ edge }, k) => {
    const from = corners[k] ?? edge.from;
    return { ...edge, from, to: corners[(k + 1) % corners.length] ?? edge.to };
  });
}

function midway(p: Point, q: Point): Point {
  return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
}

/** Has an edge no length any more, or been turned end for end, by what its neighbours took of it? */
function turnedBack(edge: Edge, moved: Edge | undefined): boolean {
  if (moved === undefined) return true;
  if (edge.kind === 'line' || moved.kind === 'line')
    return (
      (moved.to.x - moved.from.x) * (edge.to.x - edge.from.x) +
        (moved.to.y - moved.from.y) * (edge.to.y - edge.from.y) <=
      0
    );
  return sweepOf(moved) > (sweepOf(edge) + 2 * Math.PI) / 2;
}
