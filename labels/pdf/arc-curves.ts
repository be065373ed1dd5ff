import type { FigureRun } from '#core/drawing/figure.ts';

interface At {
  readonly x: number;
  readonly y: number;
}

/** No curve turns further than this, so that it leaves its circle by less than a hundred-millionth of the radius. */
const WIDEST_TURN = Math.PI / 12;

/**
 * An arc as cubic curves, each given by its two control points and its end. The kind of arc is the figure's: from a
 * point to another with a radius, `large` and `sweep` meaning what they mean in SVG (y down). A radius too small to
 * reach is taken as half the distance, as SVG does.
 */
export function arcCurves(from: At, run: Extract<FigureRun, { kind: 'arc' }>): (readonly [At, At, At])[] {
  const [dx, dy] = [run.x - from.x, run.y - from.y];
  const apart = Math.hypot(dx, dy);
  if (apart === 0) return [];
  const radius = Math.max(run.radius, apart / 2);
  const off = Math.sqrt(Math.max(0, radius * radius - (apart * apart) / 4)) / apart;
  const side = run.large === run.sweep ? -1 : 1;
  const centre = { x: (from.x + run.x) / 2 - side * off * dy, y: (from.y + run.y) / 2 + side * off * dx };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  let turn = Math.atan2(run.y - centre.y, run.x - centre.x) - start;
  if (run.sweep && turn <= 0) turn += 2 * Math.PI;
  if (!run.sweep && turn >= 0) turn -= 2 * Math.PI;
  const count = Math.max(1, Math.ceil(Math.abs(turn) / WIDEST_TURN));
  const step = turn / count;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  const curves: (readonly [At, At, At])[] = [];
  for (let k = 0; k < count; k += 1) {
    const [a, b] = [start + k * step, start + (k + 1) * step];
    const end =
      k === count - 1
        ? { x: run.x, y: run.y }
        : { x: centre.x + radius * Math.cos(b), y: centre.y + radius * Math.sin(b) };
    curves.push([
      {
        x: centre.x + radius * Math.cos(a) - handle * Math.sin(a),
        y: centre.y + radius * Math.sin(a) + handle * Math.cos(a),
      },
      { x: end.x + handle * Math.sin(b), y: end.y - handle * Math.cos(b) },
      end,
    ]);
  }
  return curves;
}
