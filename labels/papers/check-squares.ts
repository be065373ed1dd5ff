import { say } from '#core/words/say.ts';
import { frame, type PaperPage } from './paper-page.ts';
import { MARGIN } from './paper-size.ts';

/** One inch and a hundred millimetres, in points. */
export const INCH_SQUARE = 72;
export const MM_SQUARE = (100 * 72) / 25.4;

/** The two squares that tell whether a page came out in true size, side by side from a lower left corner. */
export function checkSquares(page: PaperPage, x: number, y: number): void {
  const { stream, faces } = page;
  const square = (left: number, side: number, text: string) => {
    frame(page, left, y, { width: side, height: side }, 0.5);
    stream.text(text, left + (side - faces.bold.width(text, 10)) / 2, y + side / 2 - 3.5, 10, 'bold');
  };
  square(x, MM_SQUARE, say('paper.check-mm'));
  square(x + MM_SQUARE + 24, INCH_SQUARE, say('paper.check-inch'));
}

/** A line of 100 mm between two ticks at the foot of a full-size page, with what it is. */
export function checkLine(page: PaperPage): void {
  const { stream } = page;
  const y = MARGIN + 13;
  stream.line(MARGIN, y, MARGIN + MM_SQUARE, y, 0.5);
  for (const x of [MARGIN, MARGIN + MM_SQUARE]) stream.line(x, y - 3, x, y + 3, 0.5);
  stream.text(say('paper.check-line'), MARGIN + MM_SQUARE + 6, y - 2.5, 7.5);
}
