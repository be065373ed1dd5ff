import type { Box } from '../pdf/box.ts';
import type { PaperPage } from './paper-page.ts';

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
export interface Block {
  readonly lines: readonly ColumnLine[];
  /** White above it, but at the head of a column. */
  readonly above?: number;
  /** What stands before it where it begins a column: of what it is the rest. */
  readonly rest?: readonly ColumnLine[];
}

/** Between two columns. */
export const GAP = 12;

/** A column to be filled, on which page of the card it stands. */
export interface Column extends Box {
  readonly page: number;
}

/** A line where it stands: its column, and the height of its lower edge. */
export interface Placed {
  readonly line: ColumnLine;
  readonly column: Column;
  readonly y: number;
}

/** How wide each of several columns is in a width. */
export function columnWidth(width: number, columns: number): number {
  return (width - (columns - 1) * GAP) / columns;
}

/** A box in columns side by side. */
export function columnsIn({ x, y, width, height }: Box, columns: number, page: number): Column[] {
  const wide = columnWidth(width, columns);
  return Array.from({ length: columns }, (_, k) => ({
    page,
    x: x + k * (wide + GAP),
    y,
    width: wide,
    height,
  }));
}

/**
 * Blocks down one column after the other; null where they have more than the columns hold. A block that is higher than a
 * column is broken.
 */
export function flowBlocks(blocks: readonly Block[], columns: readonly Column[]): Placed[] | null {
  const placed: Placed[] = [];
  let k = 0;
  let column = columns[0];
  if (column === undefined) return blocks.length === 0 ? placed : null;
  let y = topOf(column);
  const next = (): Column | undefined => {
    k += 1;
    const following = columns[k];
    if (following !== undefined) y = topOf(following);
    return following;
  };
  for (const { lines, above = 0, rest = [] } of blocks) {
    const high = lines.reduce((sum, { height }) => sum + height, 0);
    while (y < topOf(column) && y - above - high < column.y) {
      column = next();
      if (column === undefined) return null;
    }
    const begins = y >= topOf(column);
    if (!begins) y -= above;
    for (const line of begins ? [...rest, ...lines] : lines) {
      while (y - line.height < column.y) {
        column = next();
        if (column === undefined) return null;
      }
      y -= line.height;
      placed.push({ line, column, y });
    }
  }
  return placed;
}

/** Writes placed lines on their page. */
export function writePlaced({ stream }: PaperPage, placed: readonly Placed[]): void {
  for (const { line, column, y } of placed) {
    const top = y + line.height - 1;
    if (line.ruled === true) stream.line(column.x, top, column.x + column.width, top, 0.8);
    for (const { text, x, size, weight } of line.runs)
      stream.text(text, column.x + x, y + line.height * 0.25, size, weight);
  }
}

function topOf({ y, height }: Column): number {
  return y + height;
}
