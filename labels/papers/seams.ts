import type { Box } from '../pdf/box.ts';
import { dashed, type PaperPage } from './paper-page.ts';
import { OVERLAP, type Tile, type Tiling } from './tiles.ts';

/** Half the strip that two sheets share: the crosses stand in its middle. */
const HALF = OVERLAP / 2;

/** Dashed lines where the neighbour's sheet begins, and crosses that must come to lie on its crosses. */
export function seams(page: PaperPage, { body, rows, columns }: Tiling, { row, column }: Tile): void {
  const [left, right, bottom, top] = [body.x, body.x + body.width, body.y, body.y + body.height];
  if (column > 0) uprightSeam(page, body, left + OVERLAP, left + HALF);
  if (column < columns - 1) uprightSeam(page, body, right - OVERLAP, right - HALF);
  if (row > 0) levelSeam(page, body, top - OVERLAP, top - HALF);
  if (row < rows - 1) levelSeam(page, body, bottom + OVERLAP, bottom + HALF);
}

function uprightSeam(page: PaperPage, { y, height }: Box, line: number, middle: number): void {
  dashed(page, line, y, line, y + height);
  for (const end of [y + OVERLAP + 12, y + height - OVERLAP - 12]) cross(page, middle, end);
}

function levelSeam(page: PaperPage, { x, width }: Box, line: number, middle: number): void {
  dashed(page, x, line, x + width, line);
  for (const end of [x + OVERLAP + 12, x + width - OVERLAP - 12]) cross(page, end, middle);
}

function cross({ stream }: PaperPage, x: number, y: number): void {
  stream.line(x - 7, y, x + 7, y, 0.5);
  stream.line(x, y - 7, x, y + 7, 0.5);
}
