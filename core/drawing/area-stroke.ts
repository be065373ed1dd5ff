import type { Area, Point, Run } from './model.ts';
import type { FigurePath, FigureRun, PathStroke } from './figure.ts';

/** An area's outline in the medium's units. */
export function areaStroke(area: Area, place: (point: Point) => Point, scale: number): PathStroke {
  return {
    kind: 'path',
    path: placed(area.path, place, scale),
    pen: area.pen,
    fill: area.fill,
    role: area.role,
    ...(area.place === undefined ? {} : { place: area.place }),
  };
}

function placed(
  { start, runs, open }: Area['path'],
  place: (point: Point) => Point,
  scale: number,
): FigurePath {
  let from = start;
  const { x, y } = place(start);
  return {
    x,
    y,
    runs: runs.map((run): FigureRun => {
      const begin = from;
      from = run.to;
      const to = place(run.to);
      return run.kind === 'line'
        ? { kind: 'line', ...to }
        : { kind: 'arc', ...to, ...arcOf(begin, run, scale) };
    }),
    closed: open !== true,
  };
}

/** What SVG wants to know of an arc; a positive cross product turns anticlockwise, y up. */
function arcOf(from: Point, { to, centre, clockwise }: Extract<Run, { kind: 'arc' }>, scale: number) {
  const cross = (from.x - centre.x) * (to.y - centre.y) - (from.y - centre.y) * (to.x - centre.x);
  return {
    radius: Math.hypot(to.x - centre.x, to.y - centre.y) * scale,
    large: clockwise ? cross > 0 : cross < 0,
    sweep: clockwise,
  };
}
