import type { Figure } from '#core/drawing/figure.ts';
import { say } from '#core/words/say.ts';
import type { Box } from '../pdf/box.ts';
import { LEAST_TYPE, placeLine, type TextRun } from '../pdf/set-type.ts';
import type { Faces } from '../pdf/typeface.ts';
import { areaOf, type Arranged, bestArrangement, type StickerRoom } from './arrangement.ts';
import { FIRST, LEADING, type NoteLines, Notes } from './note-lines.ts';
import { stackedHead } from './stacked-head.ts';
import { type Head, headOf, type HeadWords } from './sticker-head.ts';

/** What all stickers of like parts have alike: everything but the code, the symbol, and which door of its mark. Points from the lower left corner. */
export interface StickerBody {
  readonly head: Head;
  /** One for each sticker that the part needs. */
  readonly faces: readonly StickerFace[];
}

/** What stands between head and foot of one sticker: notes, and the part drawn where it has room. */
export interface StickerFace {
  readonly runs: readonly TextRun[];
  readonly drawing: { readonly figure: Figure; readonly box: Box } | null;
}

/** Draws the part for a box of the sticker: a figure as large as the box, laid out in points. */
export interface DrawPart {
  readonly figure: (box: Box) => Figure;
  /** A panel stands upright, all others lie. */
  readonly upright: boolean;
}

/** The words of a body's head, before it is known how many stickers there are. */
export type BodyWords = Omit<HeadWords, 'counted'>;

const MOST_STICKERS = 12;

/** Type for notes that go on to another sticker: the larger, with a large head and no note broken, where it takes no more stickers. */
const SMALL_TYPE = [LEAST_TYPE + 0.5, LEAST_TYPE];

/** Which of a part's stickers: "sticker 1 of 2". */
export function countOf(k: number, n: number): string {
  return say('paper.sticker-of', { k, n });
}

/**
 * The body of a part's sticker: the notes and the drawing of the part in the room between head and foot, on one sticker
 * if type of 6 pt and a drawing 11 pt high allow it, else on as many as it takes; null where not even a word fits.
 */
export function layOutBody(
  words: BodyWords,
  room: StickerRoom,
  faces: Faces,
  draw: DrawPart,
): StickerBody | null {
  const notes = new Notes([words.text.job, ...words.text.notes], faces);
  const one = bestArrangement(
    headsOf({ ...words, counted: '' }, room, faces, [1, 0.88, 0.76]),
    notes,
    room,
    draw,
  );
  if (one !== null) return { head: one.head, faces: [drawnFace(one, draw)] };
  const counted = countOf(MOST_STICKERS, MOST_STICKERS);
  const ways = headsOf({ ...words, counted }, room, faces, [0.76, 0.64]).flatMap((head) =>
    [true, false].flatMap((whole) =>
      SMALL_TYPE.flatMap((size): StickerBody[] => {
        const several = onSeveral(head, notes, room, { size, whole }, draw);
        return several === null ? [] : [{ head, faces: several }];
      }),
    ),
  );
  return ways.toSorted((a, b) => a.faces.length - b.faces.length)[0] ?? null;
}

/** Heads in so large shares of the largest type, as far as they fit; a stacked one where none does. */
function headsOf(words: HeadWords, { stock }: StickerRoom, faces: Faces, shares: readonly number[]): Head[] {
  const largest = Math.min(18, stock.label.height * 0.16);
  const heads = shares.flatMap((share) => headOf(words, faces, stock, largest * share) ?? []);
  return heads.length > 0 ? heads : [stackedHead(words, faces, stock, largest) ?? []].flat();
}

/** Notes over several stickers; the drawing stands on the last, with the notes that are left. Null where a word has no room. */
function onSeveral(
  head: Head,
  notes: Notes,
  room: StickerRoom,
  { size, whole }: { readonly size: number; readonly whole: boolean },
  draw: DrawPart,
): StickerFace[] | null {
  const area = areaOf(head, room);
  const made: StickerFace[] = [];
  let left = notes;
  while (made.length < MOST_STICKERS) {
    // "sticker 1 of 2" stands where the drawing beside the size would: no corner here.
    const last = made.length === 0 ? null : bestArrangement([{ ...head, corner: NO_BOX }], left, room, draw);
    if (last !== null) return [...made, drawnFace(last, draw)];
    // A sticker too low for a drawing goes without rather than not at all.
    if (left.empty) return made;
    const some = left.take(area, size, whole);
    if (some === null) return null;
    made.push({ runs: noteRuns(some.taken, area), drawing: null });
    left = some.rest;
  }
  return null;
}

const NO_BOX: Box = { x: 0, y: 0, width: 0, height: 0 };

function drawnFace({ lines, notes, drawing }: Arranged, draw: DrawPart): StickerFace {
  return { runs: noteRuns(lines, notes), drawing: { figure: draw.figure(drawing), box: drawing } };
}

function noteRuns({ lines, size }: NoteLines, area: Box): TextRun[] {
  const top = area.y + area.height;
  return lines.flatMap((line, k) => placeLine(line, area.x, top - size * (FIRST + k * LEADING), 'regular'));
}
