import { say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { Size } from '../pdf/box.ts';
import { checkSquares, MM_SQUARE } from './check-squares.ts';
import type { FullSize } from './full-size.ts';
import { frame, headPage, newPage, type PaperPage } from './paper-page.ts';
import { MARGIN } from './paper-size.ts';
import { wrapLines } from './text-lines.ts';
import { onPaper, type Tiling } from './tiles.ts';

/** A full-size drawing, its number in this print, and how its sheets lie. */
export interface Spread {
  readonly number: number;
  readonly drawing: FullSize;
  readonly tiling: Tiling;
}

const TYPE = 9.5;
const LINE = 12;
/** A sheet's height on the map at least, so that its name can be read. */
const LEAST_CELL = 12;
const MAP = { width: 130, height: 110 };

/** Pages that are written from the top down, each with its head. */
class WrittenPages {
  readonly pages: PaperPage[] = [];
  readonly #paper: Size;
  readonly #job: string;
  readonly #faces: Faces;
  page: PaperPage;
  /** Where the next line stands. */
  y: number;

  constructor(paper: Size, job: string, faces: Faces) {
    this.#paper = paper;
    this.#job = job;
    this.#faces = faces;
    this.y = paper.height - MARGIN - 44;
    this.page = this.#open();
  }

  /** Goes on to the next page where so much has no room on this one. */
  keepTogether(high: number): void {
    if (this.y - high >= MARGIN + 20) return;
    this.page = this.#open();
    this.y = this.#paper.height - MARGIN - 44;
  }

  /** A text in lines as long as the page leaves beside something so wide. */
  wrap(text: string, beside = 0): string[] {
    return wrapLines(text, this.#faces.regular, TYPE, this.#paper.width - 2 * MARGIN - beside);
  }

  write(lines: readonly string[]): void {
    for (const line of lines) {
      this.page.stream.text(line, MARGIN, this.y, TYPE);
      this.y -= LINE;
    }
  }

  #open(): PaperPage {
    const page = newPage(this.#faces, this.#paper);
    headPage(page, say('paper.first-title'), this.#job);
    this.pages.push(page);
    return page;
  }
}

/** What is read first: how to check and join the sheets, then every drawing with what it is for and a map of its sheets. */
export function firstSheets(spreads: readonly Spread[], paper: Size, job: string, faces: Faces): PaperPage[] {
  const written = new WrittenPages(paper, job, faces);
  for (const text of [say('paper.true-size'), say('paper.join')]) {
    written.write(written.wrap(text));
    written.y -= 4;
  }
  written.y -= MM_SQUARE - 4;
  checkSquares(written.page, MARGIN, written.y);
  written.y -= 28;
  const said = new Set<string>();
  for (const spread of spreads) {
    describe(written, spread, freshLines(spread, said));
    for (const text of spread.drawing.use) said.add(text);
  }
  return written.pages;
}

/** What holds for several drawings is said with the first of them. */
function freshLines({ drawing, tiling }: Spread, said: ReadonlySet<string>): string[] {
  return [...drawing.lines, ...drawing.use, ...pivotLine(drawing, tiling)].filter((text) => !said.has(text));
}

/** A drawing's title and words, the map of its sheets at their right. */
function describe(written: WrittenPages, spread: Spread, texts: readonly string[]): void {
  const { drawing, tiling, number } = spread;
  const lines = texts.flatMap((text) => written.wrap(text, MAP.width + 16));
  const map = mapSize(tiling);
  const high = Math.max(22 + lines.length * LINE, map.height + 6);
  written.keepTogether(high);
  const { page, y: top } = written;
  page.stream.text(say('paper.numbered', { number, title: drawing.title }), MARGIN, top - 10, 11.5, 'bold');
  tileMap(page, spread, { x: page.size.width - MARGIN - map.width, y: top - map.height }, map.scale);
  written.y -= 26;
  written.write(lines);
  written.y = top - high - 14;
}

function pivotLine({ pivot }: FullSize, tiling: Tiling): string[] {
  return pivot === undefined
    ? []
    : [say(onPaper(tiling, pivot.at) ? 'paper.pivot-on' : 'paper.pivot-off', { where: pivot.where })];
}

function mapSize({ rows, columns, body }: Tiling): Size & { readonly scale: number } {
  const scale = Math.min(
    MAP.width / (columns * body.width),
    Math.max(MAP.height, rows * LEAST_CELL) / (rows * body.height),
    0.12,
  );
  return { scale, width: columns * body.width * scale, height: rows * body.height * scale };
}

/** How the sheets lie together, each with its name and what of the drawing it has; those without a line are crossed out. */
function tileMap(
  page: PaperPage,
  { tiling }: Spread,
  corner: { readonly x: number; readonly y: number },
  scale: number,
): void {
  const { stream, faces } = page;
  const { rows, tiles, body } = tiling;
  const cell = { width: body.width * scale, height: body.height * scale };
  for (const { row, column, name, used } of tiles) {
    const [x, y] = [corner.x + column * cell.width, corner.y + (rows - 1 - row) * cell.height];
    frame(page, x, y, cell, 0.6);
    if (used) {
      const size = Math.min(9, cell.height * 0.7, cell.width * 0.72);
      const wide = faces.bold.width(name, size);
      stream.text(name, x + (cell.width - wide) / 2, y + cell.height / 2 - size * 0.35, size, 'bold');
    } else {
      stream.line(x, y, x + cell.width, y + cell.height, 0.4);
      stream.line(x, y + cell.height, x + cell.width, y, 0.4);
    }
  }
}
