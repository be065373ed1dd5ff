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
  const flow = new Flow(paper, columns, faces, open);
  for (const block of blocks) flow.put(block);
  return flow.pages;
}

/** Where the next line stands: its page, its column, its height. */
class Flow {
  readonly pages: PaperPage[] = [];
  readonly #paper: Size;
  readonly #columns: number;
  readonly #faces: Faces;
  readonly #open: (page: PaperPage) => void;
  #page: PaperPage | undefined;
  #column: number;
  #y: number;

  constructor(paper: Size, columns: number, faces: Faces, open: (page: PaperPage) => void) {
    this.#paper = paper;
    this.#columns = columns;
    this.#faces = faces;
    this.#open = open;
    this.#column = columns;
    this.#y = bodyOf(paper).y;
  }

  /** An empty column takes every block: one that is higher is broken. */
  put(block: Block): void {
    const high = block.reduce((sum, { height }) => sum + height, 0);
    const fits = this.#y - high >= this.#bottom || this.#y >= this.#top;
    let page = this.#page === undefined || !fits ? this.#next() : this.#page;
    for (const line of block) {
      if (this.#y - line.height < this.#bottom) page = this.#next();
      this.#write(page, line);
    }
  }

  get #bottom(): number {
    return bodyOf(this.#paper).y;
  }

  get #top(): number {
    const { y, height } = bodyOf(this.#paper);
    return y + height - 4;
  }

  #next(): PaperPage {
    this.#column += 1;
    this.#y = this.#top;
    if (this.#column < this.#columns && this.#page !== undefined) return this.#page;
    this.#column = 0;
    this.#page = newPage(this.#faces, this.#paper);
    this.#open(this.#page);
    this.pages.push(this.#page);
    return this.#page;
  }

  #write({ stream }: PaperPage, { runs, height, ruled }: ColumnLine): void {
    const width = columnWidth(this.#paper, this.#columns);
    const left = bodyOf(this.#paper).x + this.#column * (width + GAP);
    if (ruled === true) stream.line(left, this.#y - 1, left + width, this.#y - 1, 0.8);
    this.#y -= height;
    for (const { text, x, size, weight } of runs)
      stream.text(text, left + x, this.#y + height * 0.25, size, weight);
  }
}
