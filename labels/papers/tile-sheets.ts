import { say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { Box, Size } from '../pdf/box.ts';
import { checkLine } from './check-squares.ts';
import { firstSheets, type Spread } from './first-sheets.ts';
import { type FullSize, type FullSizeDraft, type Note, TEXT } from './full-size.ts';
import { dashed, footPage, headPage, newPage, type PaperPage } from './paper-page.ts';
import type { PaperPiece } from './paper-work.ts';
import { spreadNotes } from './spread-notes.ts';
import { someOf } from './text-lines.ts';
import { OVERLAP, type Tile, tile, type Tiling } from './tiles.ts';

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
    const drawing = draft();
    const also = drawing.pivot === undefined ? [] : [drawing.pivot.at];
    const tiling = tile(drawing.figure, drawing.size, paper, also);
    spreads.push({ number: spreads.length + 1, drawing, tiling });
    yield { pages: [], done: spreads.length, of: 2 * half };
  }
  const first = firstSheets(spreads, paper, job, faces);
  const sheets = spreads.flatMap((spread) =>
    spread.tiling.tiles
      .filter(({ used }) => used)
      .map((each, k, { length }) => ({ spread, each, k: k + 1, of: length })),
  );
  const all = first.length + sheets.length;
  for (const [k, page] of first.entries()) footPage(page, say('paper.first-sheet'), k + 1, all);
  yield { pages: first, done: half, of: 2 * half };
  for (const [k, { spread, each, ...sheet }] of sheets.entries()) {
    const page = tileSheet(spread, each, job, faces);
    const doors = someOf(spread.drawing.doors, 6, (count) => say('paper.and-more', { count }));
    footPage(page, say('paper.sheet-at', { doors, ...sheet }), first.length + k + 1, all);
    yield { pages: [page], done: half + Math.floor(((k + 1) * half) / sheets.length), of: 2 * half };
  }
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
  if (drawing.pivot !== undefined && inside(drawing.pivot.at, each.shows)) {
    const [x, y] = [drawing.pivot.at.x + offset.x, drawing.pivot.at.y + offset.y];
    stream.clipped(body.x, body.y, body, () => {
      stream.line(x - 14, y, x + 14, y, 0.6);
      stream.line(x, y - 14, x, y + 14, 0.6);
    });
  }
  notesOf(page, drawing, each, body, offset);
  return page;
}

/** Dashed lines where the neighbour's sheet begins, and crosses that must come to lie on its crosses. */
function seams(page: PaperPage, { body, rows, columns }: Tiling, { row, column }: Tile): void {
  const { stream } = page;
  const [left, right, bottom, top] = [body.x, body.x + body.width, body.y, body.y + body.height];
  const cross = (x: number, y: number) => {
    stream.line(x - 7, y, x + 7, y, 0.5);
    stream.line(x, y - 7, x, y + 7, 0.5);
  };
  const half = OVERLAP / 2;
  const upright = [bottom + OVERLAP + 12, top - OVERLAP - 12] as const;
  const across = [left + OVERLAP + 12, right - OVERLAP - 12] as const;
  if (column > 0) {
    dashed(page, left + OVERLAP, bottom, left + OVERLAP, top);
    for (const y of upright) cross(left + half, y);
  }
  if (column < columns - 1) {
    dashed(page, right - OVERLAP, bottom, right - OVERLAP, top);
    for (const y of upright) cross(right - half, y);
  }
  if (row > 0) {
    dashed(page, left, top - OVERLAP, right, top - OVERLAP);
    for (const x of across) cross(x, top - half);
  }
  if (row < rows - 1) {
    dashed(page, left, bottom + OVERLAP, right, bottom + OVERLAP);
    for (const x of across) cross(x, bottom + half);
  }
}

function inside(point: { readonly x: number; readonly y: number }, box: Box): boolean {
  return (
    point.x >= box.x && point.x <= box.x + box.width && point.y >= box.y && point.y <= box.y + box.height
  );
}

const PITCH = TEXT * 1.25;

/** The notes whose points this sheet shows, whole and clear of each other: in their column with a leader, or beside the point. */
function notesOf(
  page: PaperPage,
  { notes, pivot }: FullSize,
  each: Tile,
  body: Box,
  offset: { readonly x: number; readonly y: number },
): void {
  const { stream, faces } = page;
  const all: readonly Note[] =
    pivot === undefined ? notes : [...notes, { at: pivot.at, text: pivot.text, below: 26 }];
  const columns = new Map<number | undefined, Note[]>();
  for (const note of all)
    if (inside(note.at, each.shows)) columns.set(note.column, [...(columns.get(note.column) ?? []), note]);
  for (const [column, here] of columns) {
    const spread = spreadNotes(
      here.map((note) => ({ wished: note.at.y + offset.y - (note.below ?? 0) - TEXT * 0.35, note })),
      body.y + 3,
      body.y + body.height - TEXT,
      PITCH,
    );
    for (const { note, height } of spread ?? []) {
      const wide = faces.regular.width(note.text, TEXT);
      const [x, y] = [note.at.x + offset.x, note.at.y + offset.y];
      // Clear of the strip that the neighbour's sheet comes to lie on.
      const right = body.x + body.width - (each.last ? 2 : OVERLAP + 4);
      const beside = x + 6 + wide <= right ? x + 6 : x - 6 - wide;
      const left = Math.max(
        body.x + 2,
        column === undefined ? beside : Math.min(right - wide, column + offset.x),
      );
      if (column !== undefined) stream.line(x, y, left - 2, height + TEXT * 0.35, 0.4);
      stream.text(note.text, left, height, TEXT);
    }
  }
}
