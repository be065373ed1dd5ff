import type { Faces } from '../pdf/typeface.ts';
import type { Size } from '../pdf/box.ts';
import { bodyOf } from './paper-size.ts';
import { newPage, type PaperPage } from './paper-page.ts';

/** A run of words on one line of a column, from the column's left edge. */
export interface Run {
  readonly text: string;
  readonly x: number;
  readonly size: number;
  readonly weight: 'regular' | 'bold';
}

/** One line of a column: its runs on one base line, and how much height it takes. */
export interface ColumnLine {
  readonly runs: readonly Run[];
  readonly height: number;
  /** A line across the column above it. */
  readonly ruled?: boolean;
}

/** Lines that stay together: they begin a new column rather than be torn apart. */
export type Block = readonly ColumnLine[];

export const GAP = 14;

export function columnWidth(paper: Size, columns: number): number {
  return (bodyOf(paper).width - (columns - 1) * GAP) / columns;
}

/** Blocks over as many columns and pages as they need, down one column after the other. A block higher than a column is broken. */
export function flowBlocks(
  blocks: readonly Block[],
  paper: Size,
  columns: number,
  faces: Faces,
  open: (page: PaperPage) => void,
): PaperPage[] {
  const body = bodyOf(paper);
  const width = columnWidth(paper, columns);
  const top = body.y + body.height - 4;
  const pages: PaperPage[] = [];
  let column = columns;
  let y = body.y;
  let page: PaperPage | undefined;
  const next = (): PaperPage => {
    column += 1;
    y = top;
    if (column < columns && page !== undefined) return page;
    column = 0;
    page = newPage(faces, paper);
    open(page);
    pages.push(page);
    return page;
  };
  for (const block of blocks) {
    const high = block.reduce((sum, { height }) => sum + height, 0);
    if (page === undefined || (y - high < body.y && y < top)) page = next();
    for (const { runs, height, ruled } of block) {
      if (y - height < body.y) page = next();
      const left = body.x + column * (width + GAP);
      if (ruled === true) page.stream.line(left, y - 1, left + width, y - 1, 0.8);
      y -= height;
      for (const { text, x, size, weight } of runs)
        page.stream.text(text, left + x, y + height * 0.25, size, weight);
    }
  }
  return pages;
}
