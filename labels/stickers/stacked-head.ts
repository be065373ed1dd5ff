import type { Faces } from '../pdf/typeface.ts';
import { LEAST_TYPE, placeLine, setLine, type TextRun } from '../pdf/set-type.ts';
import { ASCENT, type Head } from './sticker-head.ts';
import type { StickerText } from './sticker-text.ts';
import type { Stock } from '../pdf/stock.ts';

const STEP = 0.5;
const LEADING = 1.12;
/** Of a sticker's height: more is not given to the head while smaller type would do. */
const MOST_SHARE = 0.55;

/**
 * The head of a sticker too narrow for part and mark on one line: part, mark and size each on lines of their own, the count of a part's stickers below where it has no room beside. Null
 * where not even that leaves room for a note.
 */
export function stackedHead(
  text: StickerText,
  widest: string,
  counted: string,
  last: string,
  faces: Faces,
  stock: Stock,
  largest: number,
): Head | null {
  for (let size = largest; size >= LEAST_TYPE; size -= STEP) {
    const head = stackedIn(text, widest, counted, last, faces, stock, Math.max(LEAST_TYPE, size));
    if (head !== null) return head;
  }
  return null;
}

function stackedIn(
  text: StickerText,
  widest: string,
  counted: string,
  last: string,
  faces: Faces,
  { label, margin }: Stock,
  size: number,
): Head | null {
  const room = label.width - 2 * margin;
  const right = label.width - margin;
  const arrow = size * 0.75;
  const small = Math.max(LEAST_TYPE, size * 0.65);
  const least = size === LEAST_TYPE;
  const which = faces.regular.width(widest, small);
  const countWide = faces.bold.width(counted, LEAST_TYPE);
  const part = broken(text.part.split(' '), ' ', room - arrow - 2, faces, size, least);
  const mark = broken(text.mark.split(' '), ' ', room, faces, size, least);
  const number = faces.bold.width(`-${last}`, size);
  if (mark !== null && faces.bold.width(mark.at(-1) ?? '', size) + number > room) mark.push('');
  const dimensions = broken(text.size.split(' × '), ' × ', room, faces, size, false);
  if (part === null || mark === null || dimensions === null || which > room || countWide > room) return null;
  const lastMark = faces.bold.width(mark.at(-1) ?? '', size) + number;
  const ownLine = lastMark + 3 + which > room ? 1 : 0;
  const lastSize = setLine(dimensions.at(-1) ?? '', faces, size, 'bold').width;
  const countLine = counted !== '' && lastSize + 3 + countWide > room ? 1 : 0;
  const lines = part.length + mark.length + ownLine + dimensions.length + countLine;
  const high = size * (ASCENT + LEADING * (lines - 1) + 0.24);
  if (high > (label.height - 2 * margin) * (least ? 1 : MOST_SHARE)) return null;
  const lineY = (k: number) => label.height - margin - size * (ASCENT + k * LEADING);
  const at = (x: number, first: number) => (line: string, k: number) =>
    placeLine(setLine(line, faces, size, 'bold'), x, lineY(first + k), 'bold');
  const runs: TextRun[] = [
    ...part.flatMap(at(margin + arrow + 2, 0)),
    ...mark.slice(0, -1).flatMap(at(margin, part.length)),
    ...dimensions.flatMap(at(margin, part.length + mark.length + ownLine)),
  ];
  const bottom = lineY(lines - 1) - size * 0.24;
  return {
    size,
    runs,
    name: {
      before: mark.at(-1) ?? '',
      side: 'left',
      x: margin,
      y: lineY(part.length + mark.length - 1),
      size,
    },
    arrow: { x: margin, y: lineY(0), width: arrow, height: arrow },
    which: { right, y: lineY(part.length + mark.length - 1 + ownLine), size: small },
    count: { right, y: lineY(lines - 1), size: LEAST_TYPE },
    corner: { x: right, y: bottom, width: 0, height: 0 },
    bottom,
  };
}

/** Words on as few lines as they go; a word longer than a line is broken anywhere if it may be. Null where it has no room. */
function broken(
  words: readonly string[],
  between: string,
  room: number,
  faces: Faces,
  size: number,
  anywhere: boolean,
): string[] | null {
  const fits = (line: string) => setLine(line, faces, size, 'bold').width <= room;
  const lines: string[] = [];
  let line = '';
  for (const [k, word] of words.entries()) {
    // What joins two words stays at the end of the first.
    const whole = k === words.length - 1 ? word : `${word}${between}`.trimEnd();
    const longer = line === '' ? whole : `${line} ${whole}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    if (!fits(whole) && !anywhere) return null;
    for (const letter of whole) {
      if (line !== '' && !fits(line + letter)) {
        lines.push(line);
        line = '';
      }
      line += letter;
    }
    if (!fits(line)) return null;
  }
  return [...lines, line];
}
