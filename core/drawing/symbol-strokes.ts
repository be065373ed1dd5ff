import type { FigurePath, PathStroke, Point, Symbol } from './model.ts';

/** A line of a sign at its point; `r` is the sign's radius in the medium's units. */
type Line = (at: Point, r: number) => FigurePath;

/** A corner of a sign, in radii of the sign from its point: x to the right, y down. */
type Corner = readonly [x: number, y: number];

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
  pivot: open(through([-1, 0], [1, 0]), through([0, -1], [0, 1])),
  'face-side': open(loop),
  'face-edge': open(through([-0.8, 1.7], [0, 0], [0.8, 1.7])),
  'face-edge-below': open(through([-0.8, -1.7], [0, 0], [0.8, -1.7])),
  stop: open(through([0, -2], [0, 2])),
};

/** The strokes of a sign at a point of the figure; its radius is 0.45 of the height of the type. */
export function symbolStrokes({ symbol, role }: Symbol, at: Point, type: number): PathStroke[] {
  const { fill, lines } = SIGNS[symbol];
  return lines.map((line) => ({ kind: 'path', role, pen: 'edge', fill, path: line(at, type * 0.45) }));
}

function filled(...corners: readonly Corner[]): Sign {
  const outline = through(...corners);
  return { fill: 'ink', lines: [(at, r) => ({ ...outline(at, r), closed: true })] };
}

function open(...lines: readonly Line[]): Sign {
  return { fill: 'none', lines };
}

function through(...[first = [0, 0], ...rest]: readonly Corner[]): Line {
  return ({ x, y }, r) => ({
    x: x + first[0] * r,
    y: y + first[1] * r,
    closed: false,
    runs: rest.map(([right, down]) => ({ kind: 'line', x: x + right * r, y: y + down * r })),
  });
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
