import { pathThrough } from '#core/drawing/figure-path.ts';
import type { Stroke } from '#core/drawing/figure.ts';
import { say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import { PageStream } from '../pdf/page-stream.ts';
import type { Size } from '../pdf/box.ts';
import { HEAD, MARGIN } from './paper-size.ts';
import { sizeThatFits, wrapLines } from './text-lines.ts';

/** A page of a paper: its stream, its size, and the faces it is set in. */
export interface PaperPage {
  readonly stream: PageStream;
  readonly size: Size;
  readonly faces: Faces;
}

export function newPage(faces: Faces, size: Size): PaperPage {
  return { stream: new PageStream(faces), size, faces };
}

/** The head of every page: what it is at the left, of which job at the right, a line under both. */
export function headPage(page: PaperPage, title: string, right: string): void {
  const { stream, size, faces } = page;
  const base = size.height - MARGIN - 14;
  const rightSize = sizeThatFits(right, faces.regular, 9, 6, (size.width - 2 * MARGIN) * 0.45);
  const wide = faces.regular.width(right, rightSize);
  const room = size.width - 2 * MARGIN - wide - 12;
  stream.text(title, MARGIN, base, sizeThatFits(title, faces.bold, 14, 6, room), 'bold');
  stream.text(right, size.width - MARGIN - wide, base, rightSize);
  const line = size.height - MARGIN - HEAD + 8;
  stream.line(MARGIN, line, size.width - MARGIN, line, 1.2);
}

/** The foot of a page: a text at the left, in two lines where one has no room for it, and which page of how many at the right. */
export function footPage(page: PaperPage, text: string, k: number, of: number): void {
  const { stream, size, faces } = page;
  const number = say('paper.page', { k, n: of });
  const wide = faces.regular.width(number, 8);
  stream.text(number, size.width - MARGIN - wide, MARGIN, 8);
  const room = size.width - 2 * MARGIN - wide - 12;
  const type = sizeThatFits(text, faces.regular, 8, 6.5, room);
  const lines = wrapLines(text, faces.regular, type, room);
  for (const [line, words] of lines.entries())
    stream.text(words, MARGIN, MARGIN + (lines.length - 1 - line) * type * 1.2, type);
}

/** A dashed line. */
export function dashed(page: PaperPage, x1: number, y1: number, x2: number, y2: number): void {
  const { width, height } = page.size;
  const stroke: Stroke = {
    kind: 'path',
    pen: 'hidden',
    fill: 'none',
    role: 'seam',
    path: pathThrough([
      { x: x1, y: height - y1 },
      { x: x2, y: height - y2 },
    ]),
  };
  page.stream.figure({ width, height, scale: 1, title: '', strokes: [stroke] }, { x: 0, y: 0 });
}

/** A rectangle's outline. */
export function frame(page: PaperPage, x: number, y: number, size: Size, width = 0.8): void {
  const { stream } = page;
  stream.line(x, y, x + size.width, y, width);
  stream.line(x + size.width, y, x + size.width, y + size.height, width);
  stream.line(x + size.width, y + size.height, x, y + size.height, width);
  stream.line(x, y + size.height, x, y, width);
}
