import type { Point, Stroke, Symbol } from './model.ts';

/** Signs of one fixed size: arrows, the trammel's pivot, the stop's face. */
export function symbolStrokes({ symbol, role }: Symbol, { x, y }: Point, type: number): Stroke[] {
  const r = type * 0.45;
  const path = (
    points: readonly (readonly [number, number])[],
    closed: boolean,
    fill: 'ink' | 'none',
  ): Stroke => {
    const [first = [0, 0], ...rest] = points;
    return {
      kind: 'path',
      role,
      pen: 'edge',
      fill,
      path: {
        x: x + first[0],
        y: y + first[1],
        closed,
        runs: rest.map(([dx, dy]) => ({ kind: 'line', x: x + dx, y: y + dy })),
      },
    };
  };
  switch (symbol) {
    case 'arrow-up':
      return [
        path(
          [
            [0, -r],
            [r, r],
            [-r, r],
          ],
          true,
          'ink',
        ),
      ];
    case 'arrow-down':
      return [
        path(
          [
            [0, r],
            [r, -r],
            [-r, -r],
          ],
          true,
          'ink',
        ),
      ];
    case 'arrow-left':
      return [
        path(
          [
            [-r, 0],
            [r, r],
            [r, -r],
          ],
          true,
          'ink',
        ),
      ];
    case 'arrow-right':
      return [
        path(
          [
            [r, 0],
            [-r, r],
            [-r, -r],
          ],
          true,
          'ink',
        ),
      ];
    case 'pivot':
      return [
        path(
          [
            [-r, 0],
            [r, 0],
          ],
          false,
          'none',
        ),
        path(
          [
            [0, -r],
            [0, r],
          ],
          false,
          'none',
        ),
      ];
    case 'face-side':
      return [faceSide(x, y, r, role)];
    case 'face-edge':
    case 'face-edge-below': {
      const into = symbol === 'face-edge' ? r * 1.7 : -r * 1.7;
      return [
        path(
          [
            [-r * 0.8, into],
            [0, 0],
            [r * 0.8, into],
          ],
          false,
          'none',
        ),
      ];
    }
    case 'stop':
      return [
        path(
          [
            [0, -2 * r],
            [0, 2 * r],
          ],
          false,
          'none',
        ),
      ];
  }
}

/** The joiner's loop for the face side: two tails that cross and meet in a bow. */
function faceSide(x: number, y: number, r: number, role: string): Stroke {
  const bow = r * 0.45;
  return {
    kind: 'path',
    role,
    pen: 'edge',
    fill: 'none',
    path: {
      x: x - r * 0.7,
      y: y + r,
      closed: false,
      runs: [
        { kind: 'line', x: x + bow, y: y - r * 0.5 },
        { kind: 'arc', x: x - bow, y: y - r * 0.5, radius: bow, large: false, sweep: false },
        { kind: 'line', x: x + r * 0.7, y: y + r },
      ],
    },
  };
}
