import type { PlanDoor } from '#core/plan/plan.ts';
import type { PageStream } from '../pdf/page-stream.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { Stock } from './stock-in-points.ts';
import { countOf } from './sticker-body.ts';
import type { CodeFoot } from './sticker-foot.ts';
import type { Head } from './sticker-head.ts';
import { whichOf } from './sticker-text.ts';

/** Draws one sticker on a page, its lower left corner at a place. */
export type LaidSticker = (page: PageStream, at: { readonly x: number; readonly y: number }) => void;

/** One sticker of a part of a door: what like parts share, and which of the part's stickers it is. */
export interface StickerOfDoor {
  readonly door: PlanDoor;
  /** How many doors of its mark there are. */
  readonly doors: number;
  readonly head: Head;
  readonly foot: CodeFoot;
  /** What like parts share, as operators. */
  readonly body: string;
  readonly k: number;
  readonly of: number;
}

/** A sticker with what it has of its own: the door's name, which of its mark, the code in plain type and as a symbol. */
export function laySticker(sticker: StickerOfDoor, { dpi }: Stock, faces: Faces): LaidSticker {
  const { door, doors, head, foot, body, k, of } = sticker;
  const number = door.door.slice(door.mark.length + 1);
  const name = `${head.name.before}-${number}`;
  const nameX =
    head.name.side === 'left' ? head.name.x : head.name.x - faces.bold.width(name, head.name.size);
  const which = whichOf(number, doors);
  const { symbol } = foot;
  return (page, at) => {
    page.placed(at.x, at.y, body);
    page.text(name, at.x + nameX, at.y + head.name.y, head.name.size, 'bold');
    endingAt(page, which, head.which, at, faces, 'regular');
    for (const line of foot.code) page.text(line.text, at.x + line.x, at.y + line.y, line.size, 'bold');
    if (of > 1) endingAt(page, countOf(k, of), head.count, at, faces, 'bold');
    page.symbol(symbol.bars, at.x + symbol.x, at.y + symbol.y, symbol.dots, dpi, symbol.height);
  };
}

/** A text that ends at the right of its place in the head. */
function endingAt(
  page: PageStream,
  text: string,
  { right, y, size }: Head['which'],
  at: { readonly x: number; readonly y: number },
  faces: Faces,
  weight: 'regular' | 'bold',
): void {
  page.text(text, at.x + right - faces[weight].width(text, size), at.y + y, size, weight);
}
