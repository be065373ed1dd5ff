import { edgesOf, type Outline, sweepOf } from './outline.ts';

/** An outline as the data of an SVG path, closed; its y is down already. */
export function pathData(outline: Outline): string {
  const { start } = outline;
  const runs = edgesOf(outline).map((edge) => {
    const { x, y } = edge.to;
    if (edge.kind === 'line') return `L${x} ${y}`;
    const radius = Math.hypot(x - edge.centre.x, y - edge.centre.y);
    const large = sweepOf(edge) > Math.PI ? 1 : 0;
    // Counted with y up; with y down the same points are run through the other way round.
    return `A${radius} ${radius} 0 ${large} ${edge.clockwise ? 0 : 1} ${x} ${y}`;
  });
  return `M${start.x} ${start.y}${runs.join('')}Z`;
}
