import { say } from '#core/words/say.ts';
import { type Box, inside, type Size } from '../pdf/box.ts';
import type { Faces } from '../pdf/typeface.ts';
import { checkLine } from './check-squares.ts';
import { firstSheets, type Spread } from './first-sheets.ts';
import { someDoors } from './for-doors.ts';
import type { FullSizeDraft } from './full-size.ts';
import { footPage, headPage, newPage, type PaperPage } from './paper-page.ts';
import type { PaperPiece } from './paper-work.ts';
import { seams } from './seams.ts';
import { sheetNotes } from './sheet-notes.ts';
import { type Tile, tile } from './tiles.ts';

/**
 * Full-size drawings on paper: what is read first, then the sheets of each that have a line on them. Half the work is
 * drawing and tiling them, half is the sheets.
 */
export function* fullSizeSheets(
  drafts: readonly FullSizeDraft[],
  paper: Size,
  job: string,
  faces: Faces,
): Generator<PaperPiece> {
  const half = drafts.length;
  if (half === 0) return;
  const spreads: Spread[] = [];
  for (const draft of drafts) {
    spreads.push(spreadOf(draft, spreads.length + 1, paper));
    yield { pages: [], done: spreads.length, of: 2 * half };
  }
  const first = firstSheets(spreads, paper, job, faces);
  const sheets = spreads.flatMap(usedTiles);
  const all = first.length + sheets.length;
  for (const [k, page] of first.entries()) footPage(page, say('paper.first-sheet'), k + 1, all);
  yield { pages: first, done: half, of: 2 * half };
  for (const [k, { spread, each, ...sheet }] of sheets.entries()) {
    const page = tileSheet(spread, each, job, faces);
    const doors = someDoors(spread.drawing.doors, 6);
    footPage(page, say('paper.sheet-at', { doors, ...sheet }), first.length + k + 1, all);
    yield { pages: [page], done: half + Math.floor(((k + 1) * half) / sheets.length), of: 2 * half };
  }
}

function spreadOf(draft: FullSizeDraft, number: number, paper: Size): Spread {
  const drawing = draft();
  const also = drawing.pivot === undefined ? [] : [drawing.pivot.at];
  return { number, drawing, tiling: tile(drawing.figure, drawing.size, paper, also) };
}

/** The sheets of a drawing that have a line on them, and which of how many each is. */
function usedTiles(spread: Spread) {
  return spread.tiling.tiles
    .filter(({ used }) => used)
    .map((each, k, { length }) => ({ spread, each, k: k + 1, of: length }));
}

/** One sheet in true size: its stretch of the drawing, cut off at the sheet's body, with the seams to its neighbours. */
function tileSheet({ drawing, tiling, number }: Spread, each: Tile, job: string, faces: Faces): PaperPage {
  const page = newPage(faces, tiling.page);
  const { body } = tiling;
  const { stream } = page;
  const offset = { x: body.x - each.shows.x, y: body.y - each.shows.y };
  headPage(page, say('paper.tile-title', { number, title: drawing.title, name: each.name }), job);
  checkLine(page);
  stream.clipped(body.x, body.y, body, () =>
    stream.figure(drawing.figure, { x: offset.x, y: offset.y, weight: 0.4 }),
  );
  seams(page, tiling, each);
  if (drawing.pivot !== undefined && inside(drawing.pivot.at, each.shows))
    pivotCross(page, body, drawing.pivot.at.x + offset.x, drawing.pivot.at.y + offset.y);
  sheetNotes(page, drawing, each, { body, offset });
  return page;
}

function pivotCross({ stream }: PaperPage, body: Box, x: number, y: number): void {
  stream.clipped(body.x, body.y, body, () => {
    stream.line(x - 14, y, x + 14, y, 0.6);
    stream.line(x, y - 14, x, y + 14, 0.6);
  });
}
