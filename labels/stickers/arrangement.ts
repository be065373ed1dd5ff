import type { Box } from '../pdf/box.ts';
import type { NoteLines, Notes } from './note-lines.ts';
import type { FootRoom } from './sticker-foot.ts';
import type { Head } from './sticker-head.ts';
import type { Stock } from './stock-in-points.ts';

/** A sticker of a stock with its foot, as far as the rest has to do with it. */
export interface StickerRoom {
  readonly stock: Stock;
  readonly foot: FootRoom;
}

/** Where notes and drawing stand under a head. Points from the sticker's lower left corner. */
interface Arrangement {
  readonly head: Head;
  readonly notes: Box;
  readonly drawing: Box;
}

/** An arrangement with its notes set, and how good it is. */
export interface Arranged extends Arrangement {
  readonly lines: NoteLines;
  readonly score: number;
}

const GOOD_TYPE = 7;
/** In less width, or for an upright part in less height, the lines of a drawing crowd one another. */
const GOOD_WIDTH = 62;
const GOOD_HEIGHT = 30;
const LEAST_BOX = { width: 34, height: 11 };
const GAP = 2;

/** The best of all arrangements under any of these heads; null where the notes fit in none. */
export function bestArrangement(
  heads: readonly Head[],
  notes: Notes,
  room: StickerRoom,
  { upright }: { readonly upright: boolean },
): Arranged | null {
  const tries = heads.flatMap((head) =>
    arrangements(head, room).flatMap((each) => arranged(each, notes, upright)),
  );
  return tries.toSorted((a, b) => b.score - a.score)[0] ?? null;
}

/** What is left between head and foot. */
export function areaOf({ bottom }: Head, { stock: { margin }, foot }: StickerRoom): Box {
  return { x: margin, y: foot.bottom, width: foot.right - margin, height: bottom - foot.bottom };
}

/** Where notes and drawing can stand: the drawing beside the size, under the notes, or beside them. */
function arrangements(head: Head, room: StickerRoom): Arrangement[] {
  const area = areaOf(head, room);
  return [
    { head, notes: area, drawing: head.corner },
    ...[0.7, 0.55, 0.4, 0.3].flatMap((share) => [
      { head, ...drawingUnder(area, share) },
      { head, ...drawingBeside(area, share) },
    ]),
  ].filter(
    ({ drawing, notes }) =>
      drawing.width >= LEAST_BOX.width && drawing.height >= LEAST_BOX.height && notes.height > 0,
  );
}

function drawingUnder(area: Box, share: number) {
  const height = area.height * share;
  return {
    notes: { ...area, y: area.y + height, height: area.height - height },
    drawing: { ...area, height: height - GAP },
  };
}

function drawingBeside(area: Box, share: number) {
  const width = area.width * share;
  return {
    notes: { ...area, width: area.width - width },
    drawing: {
      x: area.x + area.width - width + GAP * 2,
      y: area.y,
      width: width - GAP * 2,
      height: area.height - GAP,
    },
  };
}

/** An arrangement with its notes set: large type first, then a high drawing and a large head. Nothing where the notes do not fit. */
function arranged(each: Arrangement, notes: Notes, upright: boolean): Arranged[] {
  const lines = notes.fit(each.notes);
  if (lines === null) return [];
  const { width, height } = each.drawing;
  const high = Math.min(height, upright ? width : width / 3, 45);
  const crowded = Math.max(0, upright ? GOOD_HEIGHT - high : GOOD_WIDTH - width) * 0.25;
  const type = lines.size * 3 - (lines.size < GOOD_TYPE ? 2 : 0);
  return [{ ...each, lines, score: type + high * 0.3 - crowded + each.head.size * 0.4 }];
}
