import { distance, edgesOf, type Outline, sweepOf } from './outline.ts';

/**
 * The area within an outline, in the square of the job's unit: over 0 where it runs anticlockwise, under 0 where
 * clockwise. Shoelace formula, and for each arc its segment R²(θ − sin θ)/2.
 */
export function signedArea(outline: Outline): number {
  let area = 0;
  for (const edge of edgesOf(outline)) {
    area += (edge.from.x * edge.to.y - edge.to.x * edge.from.y) / 2;
    if (edge.kind === 'line') continue;
    const angle = sweepOf(edge);
    const segment = (distance(edge.centre, edge.to) ** 2 * (angle - Math.sin(angle))) / 2;
    area += edge.clockwise ? -segment : segment;
  }
  return area;
}

/** The way round an outline, in the job's unit: lines by their length, arcs by R·θ. */
export function perimeter(outline: Outline): number {
  return edgesOf(outline).reduce(
    (sum, edge) =>
      sum +
      (edge.kind === 'line' ? distance(edge.from, edge.to) : distance(edge.centre, edge.to) * sweepOf(edge)),
    0,
  );
}
