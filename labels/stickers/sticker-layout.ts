import type { Figure } from '#core/drawing/figure.ts';
import { say } from '#core/words/say.ts';
import type { Faces } from '../pdf/typeface.ts';
import { FIRST, LEADING, type NoteLines, Notes } from './note-lines.ts';
import { LEAST_TYPE, placeLine, type TextRun } from '../pdf/set-type.ts';
import type { CodeFoot } from './sticker-code.ts';
import { stackedHead } from './stacked-head.ts';
import { type Box, type Head, headOf } from './sticker-head.ts';
import type { StickerText } from './sticker-text.ts';
import type { Stock } from '../pdf/stock.ts';

/** What all stickers of like parts have alike: everything but the code, the symbol, and which door of its mark. Points from the lower left corner. */
export interface StickerBody {
  readonly head: Head;
  /** One for each sticker that the part needs. */
  readonly faces: readonly {
    readonly runs: readonly TextRun[];
    readonly drawing: { readonly figure: Figure; readonly box: Box } | null;
  }[];
}

/** Draws the part for a box of the sticker: a figure as large as the box, laid out in points. */
export interface DrawPart {
  readonly figure: (box: Box) => Figure;
  /** A panel stands upright, all others lie. */
  readonly upright: boolean;
}

const GOOD_TYPE = 7;
/** In less width, or for an upright part in less height, the lines of a drawing crowd one another. */
const GOOD_WIDTH = 62;
const GOOD_HEIGHT = 30;
const LEAST_BOX = { width: 34, height: 11 };
const GAP = 2;

/**
 * The body of a part's sticker: the notes and the drawing of the part in the room between head and foot, on one sticker
 * if type of 6 pt and a drawing 11 pt high allow it, else on as many as it takes; null where not even a word fits.
 */
export function layOutBody(
  text: StickerText,
  widest: string,
  last: string,
  stock: Stock,
  foot: Pick<CodeFoot, 'bottom' | 'right'>,
  faces: Faces,
  draw: DrawPart,
): StickerBody | null {
  const notes = new Notes([text.job, ...text.notes], faces);
  const largest = Math.min(18, stock.label.height * 0.16);
  const headsIn = (counted: string, shares: readonly number[]): Head[] => {
    const heads = shares.flatMap(
      (share) => headOf(text, widest, counted, last, faces, stock, largest * share) ?? [],
    );
    if (heads.length > 0) return heads;
    return [stackedHead(text, widest, counted, last, faces, stock, largest) ?? []].flat();
  };
  const one = bestOf(headsIn('', [1, 0.88, 0.76]), notes, stock, foot, draw);
  if (one !== null) return { head: one.head, faces: [drawnFace(one, draw)] };
  const ways = headsIn(countOf(MOST_STICKERS, MOST_STICKERS), [0.76, 0.64]).flatMap((head) =>
    [true, false].flatMap((whole) =>
      SMALL_TYPE.flatMap((size) =>
        (onSeveral(head, notes, stock, foot, { size, whole }, draw) ?? []).map((each) => ({
          head,
          faces: each,
        })),
      ),
    ),
  );
  return ways.toSorted((a, b) => a.faces.length - b.faces.length)[0] ?? null;
}

/** Type for notes that go on to another sticker: the larger, with a large head and no note broken, where it takes no more stickers. */
const SMALL_TYPE = [LEAST_TYPE + 0.5, LEAST_TYPE];

function bestOf(
  heads: readonly Head[],
  notes: Notes,
  stock: Stock,
  foot: Pick<CodeFoot, 'bottom' | 'right'>,
  { upright }: DrawPart,
): Fitted | null {
  const tries = heads.flatMap((head) =>
    candidates(head, stock, foot).flatMap((each) => fitted(each, notes, upright)),
  );
  return tries.toSorted((a, b) => b.score - a.score)[0] ?? null;
}

function drawnFace({ lines, notes, drawing }: Fitted, draw: DrawPart): StickerBody['faces'][number] {
  return { runs: noteRuns(lines, notes), drawing: { figure: draw.figure(drawing), box: drawing } };
}

interface Candidate {
  readonly head: Head;
  readonly notes: Box;
  readonly drawing: Box;
}

interface Fitted extends Candidate {
  readonly lines: NoteLines;
  readonly score: number;
}

function areaOf(head: Head, { margin }: Stock, foot: Pick<CodeFoot, 'bottom' | 'right'>): Box {
  return {
    x: margin,
    y: foot.bottom,
    width: foot.right - margin,
    height: head.bottom - foot.bottom,
  };
}

/** Where notes and drawing can stand: the drawing beside the size, under the notes, or beside them. */
function candidates(head: Head, stock: Stock, foot: Pick<CodeFoot, 'bottom' | 'right'>): Candidate[] {
  const area = areaOf(head, stock, foot);
  const found: Candidate[] = [{ head, notes: area, drawing: head.corner }];
  for (const share of [0.7, 0.55, 0.4, 0.3]) {
    const height = area.height * share;
    found.push({
      head,
      notes: { ...area, y: area.y + height, height: area.height - height },
      drawing: { ...area, height: height - GAP },
    });
    const width = area.width * share;
    found.push({
      head,
      notes: { ...area, width: area.width - width },
      drawing: {
        x: area.x + area.width - width + GAP * 2,
        y: area.y,
        width: width - GAP * 2,
        height: area.height - GAP,
      },
    });
  }
  return found.filter(
    ({ drawing, notes }) =>
      drawing.width >= LEAST_BOX.width && drawing.height >= LEAST_BOX.height && notes.height > 0,
  );
}

/** A candidate with its notes set, and how good it is: large type first, then a high drawing and a large head. Nothing where the notes do not fit. */
function fitted(candidate: Candidate, notes: Notes, upright: boolean): Fitted[] {
  const lines = notes.fit(candidate.notes);
  if (lines === null) return [];
  const { width, height } = candidate.drawing;
  const high = Math.min(height, upright ? width : width / 3, 45);
  const crowded = Math.max(0, upright ? GOOD_HEIGHT - high : GOOD_WIDTH - width) * 0.25;
  const type = lines.size * 3 - (lines.size < GOOD_TYPE ? 2 : 0);
  return [{ ...candidate, lines, score: type + high * 0.3 - crowded + candidate.head.size * 0.4 }];
}

const MOST_STICKERS = 12;

/** Which of a part's stickers: "sticker 1 of 2". */
export function countOf(k: number, n: number): string {
  return say('paper.sticker-of', { k, n });
}

/** Notes over several stickers; the drawing stands on the last, with the notes that are left. Null where a word has no room. */
function onSeveral(
  head: Head,
  notes: Notes,
  stock: Stock,
  foot: Pick<CodeFoot, 'bottom' | 'right'>,
  { size, whole }: { readonly size: number; readonly whole: boolean },
  draw: DrawPart,
): [StickerBody['faces']] | null {
  const area = areaOf(head, stock, foot);
  const made: StickerBody['faces'][number][] = [];
  let left = notes;
  while (made.length < MOST_STICKERS) {
    // "sticker 1 of 2" stands where the drawing beside the size would: no corner here.
    const last = made.length === 0 ? null : bestOf([{ ...head, corner: NO_BOX }], left, stock, foot, draw);
    if (last !== null) return [[...made, drawnFace(last, draw)]];
    // A sticker too low for a drawing goes without rather than not at all.
    if (left.empty) return [made];
    const some = left.take(area, size, whole);
    if (some === null) return null;
    made.push({ runs: noteRuns(some.taken, area), drawing: null });
    left = some.rest;
  }
  return null;
}

const NO_BOX: Box = { x: 0, y: 0, width: 0, height: 0 };

function noteRuns({ lines, size }: NoteLines, area: Box): TextRun[] {
  const top = area.y + area.height;
  return lines.flatMap((line, k) => placeLine(line, area.x, top - size * (FIRST + k * LEADING), 'regular'));
}
