import type { Box } from '../pdf/box.ts';
import { LEAST_TYPE, placeLine, setLine, type TextRun } from '../pdf/set-type.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { StickerText } from './sticker-text.ts';
import type { Stock } from './stock-in-points.ts';

/** What a head says, and the widest of what is set in it for each door: room is kept for that. */
export interface HeadWords {
  readonly text: StickerText;
  /** The widest "k of n" of this mark. */
  readonly widest: string;
  /** The highest number of a door of this mark. */
  readonly last: string;
  /** The widest "sticker 1 of 2"; empty where one does. */
  readonly counted: string;
}

/** The head of every sticker: part name with the arrow to the door's top, door mark and which of how many, and the size. */
export interface Head {
  /** Of the part's name and the mark. */
  readonly size: number;
  readonly runs: readonly TextRun[];
  /** The end of the door's name, set for each door: its mark, or the end of it, then "-2"; beside "2 of 3", or from the left. */
  readonly name: {
    readonly before: string;
    readonly side: 'left' | 'right';
    readonly x: number;
    readonly y: number;
    readonly size: number;
  };
  /** Where "2 of 3" ends, its base line and its size: set for each door. */
  readonly which: { readonly right: number; readonly y: number; readonly size: number };
  /** Where "sticker 1 of 2" ends, at the right of the size, when a part has two stickers. */
  readonly count: { readonly right: number; readonly y: number; readonly size: number };
  readonly arrow: Box;
  /** What is left beside the size. */
  readonly corner: Box;
  readonly bottom: number;
}

/** How far letters stand above the line, in sizes of the type. */
export const ASCENT = 0.765;
const STEP = 0.5;

/** A head in the largest type, from a size down to the least, in which it fits; null where none does. */
export function largestHead(largest: number, headIn: (size: number) => Head | null): Head | null {
  for (let size = largest; size >= LEAST_TYPE; size -= STEP) {
    const head = headIn(size);
    if (head !== null) return head;
  }
  return null;
}

/** Part and mark on one line, the size on the next, in the largest type from a size down; null where no type fits. */
export function headOf(words: HeadWords, faces: Faces, stock: Stock, largest: number): Head | null {
  return largestHead(largest, (size) => headIn(words, faces, stock, size));
}

function headIn(words: HeadWords, faces: Faces, { label, margin }: Stock, size: number): Head | null {
  const { text } = words;
  const wide = widthsIn(words, faces, size);
  const room = label.width - 2 * margin;
  const { arrow, which, dimensions, count } = wide;
  if (arrow + 2 + wide.part.width + 6 + wide.name + 3 + which.width > room) return null;
  if (dimensions.width + count.width > room) return null;
  const base = label.height - margin - size * ASCENT;
  const second = base - size * 1.12;
  const bottom = second - size * 0.24;
  const right = label.width - margin;
  const cornerX = margin + dimensions.width + 8;
  return {
    size,
    name: { before: text.mark, side: 'right', x: right - which.width - 3, y: base, size },
    arrow: { x: margin, y: base, width: arrow, height: arrow },
    which: { right, y: base, size: which.size },
    count: { right, y: second, size: count.size },
    corner: { x: cornerX, y: bottom, width: right - cornerX, height: base - size * 0.24 - bottom },
    bottom,
    runs: [
      ...placeLine(wide.part, margin + arrow + 2, base, 'bold'),
      ...placeLine(dimensions, margin, second, 'bold'),
    ],
  };
}

/** How wide everything in a head is in a size of type. */
function widthsIn({ text, widest, last, counted }: HeadWords, faces: Faces, size: number) {
  const small = Math.max(LEAST_TYPE, size * 0.65);
  const countSize = Math.max(LEAST_TYPE, size * 0.6);
  return {
    arrow: size * 0.75,
    part: setLine(text.part, faces, size, 'bold'),
    name: faces.bold.width(`${text.mark}-${last}`, size),
    which: { size: small, width: faces.regular.width(widest, small) },
    dimensions: setLine(text.size, faces, Math.max(LEAST_TYPE, size * 0.9), 'bold'),
    count: { size: countSize, width: counted === '' ? 0 : 3 + faces.bold.width(counted, countSize) },
  };
}
