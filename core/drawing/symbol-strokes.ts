import type { FigurePath, PathStroke } from './figure.ts';
import { pathThrough } from './figure-path.ts';
import type { Point, Symbol } from './model.ts';

/** A line of a sign at its point; `r` is the sign's radius in the medium's units. */
type Line = (at: Point, r: number) => FigurePath;

/** A corner of a sign, in radii of the sign from its point: x to the right, y down. */
type Corner = readonly [x: number, y: number];
type Corners = readonly [Corner, ...Corner[]];

interface Sign {
  readonly fill: 'ink' | 'none';
  readonly lines: readonly Line[];
}

/** Arrows, the trammel's pivot, the joiner's signs of the face side and the face edge, the stop's face. */
const SIGNS: Readonly<Record<Symbol['symbol'], Sign>> = {
  'arrow-up': filled([0, -1], [1, 1], [-1, 1]),
  'arrow-down': filled([0, 1], [1, -1], [-1, -1]),
  'arrow-left': filled([-1, 0], [1, 1], [1, -1]),
  'arrow-right': filled([1, 0], [-1, 1], [-1, -1]),
  pivot: open(line([-1, 0], [1, 0]), line([0, -1], [0, 1])),
  'face-side': open(loop),
  'face-edge': open(line([-0.8, 1.7], [0, 0], [0.8, 1.7])),
  'face-edge-below': open(line([-0.8, -1.7], [0, 0], [0.8, -1.7])),
  stop: open(line([0, -2], [0, 2])),
};

/** The strokes of a sign at a point of the figure; its radius is 0.45 of the height of the type. */
export function symbolStrokes({ symbol, role }: Symbol, at: Point, type: number): PathStroke[] {
  const { fill, lines } = SIGNS[symbol];
  return lines.map((draw) => ({ kind: 'path', role, pen: 'edge', fill, path: draw(at, type * 0.45) }));
}

function filled(...corners: Corners): Sign {
  return { fill: 'ink', lines: [through(corners, true)] };
}

function open(...lines: readonly Line[]): Sign {
  return { fill: 'none', lines };
}

function line(...corners: Corners): Line {
  return through(corners, false);
}

function through([first, ...rest]: Corners, closed: boolean): Line {
  return ({ x, y }, r) => {
    const placed = ([right, down]: Corner): Point => ({ x: x + right * r, y: y + down * r });
    return pathThrough([placed(first), ...rest.map(placed)], closed);
  };
}

/** The joiner's loop for the face side: two tails that cross and meet in a bow. */
function loop({ x, y }: Point, r: number): FigurePath {
  const bow = r * 0.45;
  return {
    x: x - r * 0.7,
    y: y + r,
    closed: false,
    runs: [
      { kind: 'line', x: x + bow, y: y - r * 0.5 },
      { kind: 'arc', x: x - bow, y: y - r * 0.5, radius: bow, large: false, sweep: false },
      { kind: 'line', x: x + r * 0.7, y: y + r },
    ],
  };
}
