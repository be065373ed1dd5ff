import type { FigureRun } from '#core/drawing/figure.ts';
import type { Point } from '#core/drawing/model.ts';

/** No curve turns further than this, so that it leaves its circle by less than a hundred-millionth of the radius. */
const WIDEST_TURN = Math.PI / 12;

/** A cubic curve by its two control points and its end. */
type Curve = readonly [Point, Point, Point];

type Arc = Extract<FigureRun, { kind: 'arc' }>;

/**
 * An arc as cubic curves, each given by its two control points and its end. The kind of arc is the figure's: from a
 * point to another with a radius, `large` and `sweep` meaning what they mean in SVG (y down). A radius too small to
 * reach is taken as half the distance, as SVG does.
 */
export function arcCurves(from: Point, run: Arc): Curve[] {
  if (Math.hypot(run.x - from.x, run.y - from.y) === 0) return [];
  const { centre, radius, start, turn } = circleOf(from, run);
  const count = Math.max(1, Math.ceil(Math.abs(turn) / WIDEST_TURN));
  const step = turn / count;
  const handle = (4 / 3) * Math.tan(step / 4) * radius;
  return Array.from({ length: count }, (_, k): Curve => {
    const [a, b] = [start + k * step, start + (k + 1) * step];
    const [begin, there] = [on(centre, radius, a), on(centre, radius, b)];
    const end = k === count - 1 ? { x: run.x, y: run.y } : there;
    return [
      { x: begin.x - handle * Math.sin(a), y: begin.y + handle * Math.cos(a) },
      { x: end.x + handle * Math.sin(b), y: end.y - handle * Math.cos(b) },
      end,
    ];
  });
}

function on(centre: Point, radius: number, angle: number): Point {
  return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
}

/** The circle of an arc, the angle it begins at and how far it turns; y down, so that a sweep turns positively. */
function circleOf(from: Point, run: Arc) {
  const [dx, dy] = [run.x - from.x, run.y - from.y];
  const apart = Math.hypot(dx, dy);
  const radius = Math.max(run.radius, apart / 2);
  const off = Math.sqrt(Math.max(0, radius * radius - (apart * apart) / 4)) / apart;
  const side = run.large === run.sweep ? -1 : 1;
  const centre = { x: (from.x + run.x) / 2 - side * off * dy, y: (from.y + run.y) / 2 + side * off * dx };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const turn = Math.atan2(run.y - centre.y, run.x - centre.x) - start;
  if (run.sweep && turn <= 0) return { centre, radius, start, turn: turn + 2 * Math.PI };
  if (!run.sweep && turn >= 0) return { centre, radius, start, turn: turn - 2 * Math.PI };
  return { centre, radius, start, turn };
}
