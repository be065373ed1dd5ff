import type { Faces } from '../pdf/typeface.ts';
import { LEAST_TYPE, placeLine, setLine, type TextRun } from '../pdf/set-type.ts';
import type { StickerText } from './sticker-text.ts';
import type { Stock } from '../pdf/stock.ts';

/** A box in points, from its lower left corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
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
  /** Where "2 of 3" begins, its base line and its size: set for each door. */
  readonly which: { readonly right: number; readonly y: number; readonly size: number };
  /** Where "sticker 1 of 2" ends, at the right of the size, when a part has two stickers. */
  readonly count: { readonly right: number; readonly y: number; readonly size: number };
  readonly arrow: Box;
  /** What is left beside the size. */
  readonly corner: Box;
  readonly bottom: number;
}

const LEAST_HEAD = LEAST_TYPE;
/** How far letters stand above the line, in sizes of the type. */
export const ASCENT = 0.765;
const STEP = 0.5;

/** The head in the largest type, from a size down, in which it fits; `widest` is the widest "k of n" of this mark, `counted` the widest "sticker 1 of 2", empty where one does, `last` the highest number of a door. Null where none fits. */
export function headOf(
  text: StickerText,
  widest: string,
  counted: string,
  last: string,
  faces: Faces,
  { label, margin }: Stock,
  largest: number,
): Head | null {
  const room = label.width - 2 * margin;
  for (let size = largest; size >= LEAST_HEAD; size -= STEP) {
    const small = Math.max(LEAST_TYPE, size * 0.65);
    const arrow = size * 0.75;
    const part = setLine(text.part, faces, size, 'bold');
    const mark = faces.bold.width(`${text.mark}-${last}`, size);
    const which = faces.regular.width(widest, small);
    const dimensions = setLine(text.size, faces, Math.max(LEAST_TYPE, size * 0.9), 'bold');
    const countSize = Math.max(LEAST_TYPE, size * 0.6);
    const countRoom = counted === '' ? 0 : 3 + faces.bold.width(counted, countSize);
    if (arrow + 2 + part.width + 6 + mark + 3 + which > room || dimensions.width + countRoom > room) continue;
    const base = label.height - margin - size * ASCENT;
    const second = base - size * 1.12;
    const bottom = second - size * 0.24;
    const right = label.width - margin;
    const cornerX = margin + dimensions.width + 8;
    return {
      size,
      name: { before: text.mark, side: 'right', x: right - which - 3, y: base, size },
      arrow: { x: margin, y: base, width: arrow, height: arrow },
      which: { right, y: base, size: small },
      count: { right, y: second, size: countSize },
      corner: { x: cornerX, y: bottom, width: right - cornerX, height: base - size * 0.24 - bottom },
      bottom,
      runs: [
        ...placeLine(part, margin + arrow + 2, base, 'bold'),
        ...placeLine(dimensions, margin, second, 'bold'),
      ],
    };
  }
  return null;
}
