import type { FigureMark, Point, Symbol } from './model.ts';

/** Marks of one fixed size: arrows, the trammel's pivot, the stop's face. */
export function symbolMarks({ symbol, role }: Symbol, { x, y }: Point, type: number): FigureMark[] {
  const r = type * 0.45;
  const path = (
    points: readonly (readonly [number, number])[],
    closed: boolean,
    fill: 'ink' | 'none',
  ): FigureMark => {
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
      return [
        path(
          [
            [-r, r],
            [0, -r * 0.2],
            [r, r * 0.6],
            [0, r],
            [-r * 0.6, r * 0.3],
          ],
          false,
          'none',
        ),
      ];
    case 'face-edge':
      return [
        path(
          [
            [-r, -r],
            [0, r],
            [r, -r],
          ],
          false,
          'none',
        ),
      ];
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
