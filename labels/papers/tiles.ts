import type { Figure } from '#core/drawing/figure.ts';
import { arcCurves } from '../pdf/arc-curves.ts';
import type { Box, Size } from '../pdf/box.ts';
import { bodyOf } from './paper-size.ts';

/** How much of the drawing two neighbouring sheets have in common, in points. */
export const OVERLAP = 36;

/** One sheet of a full-size drawing. */
export interface Tile {
  readonly row: number;
  readonly column: number;
  /** "A1": rows by letter from the top, columns by number from the left. */
  readonly name: string;
  /** The part of the drawing that it shows, in the drawing's own points from its lower left corner. */
  readonly shows: Box;
  /** False where no line of the drawing runs over it: it need not be printed. */
  readonly used: boolean;
  /** True where no sheet follows to the right. */
  readonly last: boolean;
}

/** How a drawing is spread over sheets: all of one size and lie, its upper left corner on the first. */
export interface Tiling {
  readonly page: Size;
  readonly body: Box;
  readonly rows: number;
  readonly columns: number;
  readonly tiles: readonly Tile[];
}

/** The tiling with the fewest sheets, upright or across. */
export function tile(
  figure: Figure,
  size: Size,
  paper: Size,
  also: readonly { readonly x: number; readonly y: number }[] = [],
): Tiling {
  const upright = spread(size, paper);
  const across = spread(size, { width: paper.height, height: paper.width });
  const { page, body, rows, columns } =
    across.rows * across.columns < upright.rows * upright.columns ? across : upright;
  const lines = segments(figure);
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const shows = {
        x: column * (body.width - OVERLAP),
        y: size.height - body.height - row * (body.height - OVERLAP),
        width: body.width,
        height: body.height,
      };
      const used =
        lines.some(([a, b]) => crosses(a, b, shows)) || also.some((point) => crosses(point, point, shows));
      tiles.push({
        row,
        column,
        name: `${letters(row)}${column + 1}`,
        shows,
        used,
        last: column === columns - 1,
      });
    }
  return { page, body, rows, columns, tiles };
}

/** Does the paper of these sheets reach a point of the drawing? */
export function onPaper(tiling: Tiling, point: { readonly x: number; readonly y: number }): boolean {
  return tiling.tiles.some(({ shows }) => crosses(point, point, shows));
}

function spread(size: Size, page: Size) {
  const body = bodyOf(page);
  const count = (long: number, room: number) => Math.max(1, Math.ceil((long - OVERLAP) / (room - OVERLAP)));
  return { page, body, columns: count(size.width, body.width), rows: count(size.height, body.height) };
}

/** A, B … Z, AA, AB … */
function letters(row: number): string {
  const last = String.fromCharCode(65 + (row % 26));
  return row < 26 ? last : letters(Math.floor(row / 26) - 1) + last;
}

interface At {
  readonly x: number;
  readonly y: number;
}

/** Every line of a figure as straight pieces, from its lower left corner. */
function segments({ strokes, height }: Figure): (readonly [At, At])[] {
  const found: (readonly [At, At])[] = [];
  for (const stroke of strokes) {
    if (stroke.kind === 'text') continue;
    let from: At = { x: stroke.path.x, y: stroke.path.y };
    const to = (next: At) => {
      found.push([
        { x: from.x, y: height - from.y },
        { x: next.x, y: height - next.y },
      ]);
      from = { x: next.x, y: next.y };
    };
    for (const run of stroke.path.runs)
      if (run.kind !== 'arc') to(run);
      else for (const [, , end] of arcCurves(from, run)) to(end);
    if (stroke.path.closed) to(stroke.path);
  }
  return found;
}

/** Has a straight piece any point inside a box? (Liang and Barsky's clipping of a line against a rectangle.) */
function crosses(a: At, b: At, box: Box): boolean {
  let [from, to] = [0, 1];
  const sides = [
    [a.x - b.x, a.x - box.x],
    [b.x - a.x, box.x + box.width - a.x],
    [a.y - b.y, a.y - box.y],
    [b.y - a.y, box.y + box.height - a.y],
  ] as const;
  for (const [step, room] of sides) {
    if (step === 0) {
      if (room < 0) return false;
    } else if (step < 0) from = Math.max(from, room / step);
    else to = Math.min(to, room / step);
  }
  return from <= to;
}
