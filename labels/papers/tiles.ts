import type { Figure } from '#core/drawing/figure.ts';
import type { Point } from '#core/drawing/model.ts';
import { type Box, inside, type Size } from '../pdf/box.ts';
import { bodyOf } from './paper-size.ts';
import { crosses, straightPieces } from './straight-pieces.ts';

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

/** The tiling with the fewest sheets, upright or across; `also` are points that must be on a sheet that is printed. */
export function tile(figure: Figure, size: Size, paper: Size, also: readonly Point[] = []): Tiling {
  const upright = spread(size, paper);
  const across = spread(size, { width: paper.height, height: paper.width });
  const chosen = across.rows * across.columns < upright.rows * upright.columns ? across : upright;
  const lines = straightPieces(figure);
  const used = (shows: Box) =>
    lines.some((line) => crosses(line, shows)) || also.some((point) => inside(point, shows));
  return { ...chosen, tiles: tilesOf(chosen, size, used) };
}

/** Row by row from the top, column by column from the left. */
function tilesOf(
  { rows, columns, body }: Omit<Tiling, 'tiles'>,
  size: Size,
  used: (shows: Box) => boolean,
): Tile[] {
  return Array.from({ length: rows * columns }, (_, k) => {
    const [row, column] = [Math.floor(k / columns), k % columns];
    const shows = {
      x: column * (body.width - OVERLAP),
      y: size.height - body.height - row * (body.height - OVERLAP),
      width: body.width,
      height: body.height,
    };
    const name = `${letters(row)}${column + 1}`;
    return { row, column, name, shows, used: used(shows), last: column === columns - 1 };
  });
}

/** Does the paper of these sheets reach a point of the drawing? */
export function onPaper(tiling: Tiling, point: Point): boolean {
  return tiling.tiles.some(({ shows }) => inside(point, shows));
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
