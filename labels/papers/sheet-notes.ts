import { type Box, inside } from '../pdf/box.ts';
import { type FullSize, type Note, TEXT } from './full-size.ts';
import type { PaperPage } from './paper-page.ts';
import { spreadNotes } from './spread-notes.ts';
import { OVERLAP, type Tile } from './tiles.ts';

const PITCH = TEXT * 1.25;

/** A sheet's body on its page, and how far the drawing is moved to show its stretch there. */
export interface Shown {
  readonly body: Box;
  readonly offset: { readonly x: number; readonly y: number };
}

/** The notes whose points a sheet shows, whole and clear of each other: in their column with a leader, or beside the point. */
export function sheetNotes(page: PaperPage, drawing: FullSize, tile: Tile, { body, offset }: Shown): void {
  // Clear of the strip that the neighbour's sheet comes to lie on.
  const right = body.x + body.width - (tile.last ? 2 : OVERLAP + 4);
  for (const here of byColumn(drawing, tile)) {
    const spread = spreadNotes(
      here.map((note) => ({ wished: note.at.y + offset.y - (note.below ?? 0) - TEXT * 0.35, note })),
      body.y + 3,
      body.y + body.height - TEXT,
      PITCH,
    );
    for (const { note, height } of spread ?? [])
      writeNote(page, note, height, { left: body.x + 2, right }, offset);
  }
}

/** The notes of a sheet's points, those of one column together; those without one too. */
function byColumn({ notes, pivot }: FullSize, { shows }: Tile): Note[][] {
  const all = pivot === undefined ? notes : [...notes, { at: pivot.at, text: pivot.text, below: 26 }];
  const columns = new Map<number | undefined, Note[]>();
  for (const note of all)
    if (inside(note.at, shows)) columns.set(note.column, [...(columns.get(note.column) ?? []), note]);
  return [...columns.values()];
}

/** A note at a height, between left and right; with a leader from its point where it stands in a column. */
function writeNote(
  { stream, faces }: PaperPage,
  { at, text, column }: Note,
  height: number,
  { left: least, right }: { readonly left: number; readonly right: number },
  offset: Shown['offset'],
): void {
  const wide = faces.regular.width(text, TEXT);
  const [x, y] = [at.x + offset.x, at.y + offset.y];
  const beside = x + 6 + wide <= right ? x + 6 : x - 6 - wide;
  const left = Math.max(least, column === undefined ? beside : Math.min(right - wide, column + offset.x));
  if (column !== undefined) stream.line(x, y, left - 2, height + TEXT * 0.35, 0.4);
  stream.text(text, left, height, TEXT);
}
