import { inPieces } from '../pdf/in-pieces.ts';
import { LEAST_TYPE, placeLine, setLine } from '../pdf/set-type.ts';
import type { Faces } from '../pdf/typeface.ts';
import { ASCENT, type Head, type HeadWords, largestHead } from './sticker-head.ts';
import type { Stock } from './stock-in-points.ts';

const LEADING = 1.12;
/** How far letters hang below the line, in sizes of the type. */
const DESCENT = 0.24;
/** Of a sticker's height: more is not given to the head while smaller type would do. */
const MOST_SHARE = 0.55;

/**
 * The head of a sticker too narrow for part and mark on one line: part, mark and size each on lines of their own, the
 * count of a part's stickers below where it has no room beside. Null where not even that leaves room for a note.
 */
export function stackedHead(words: HeadWords, faces: Faces, stock: Stock, largest: number): Head | null {
  return largestHead(largest, (size) => stackedIn(words, faces, stock, size));
}

/** The lines of a stacked head in a size of type. */
interface Stack {
  readonly part: readonly string[];
  /** Of the door's mark; the door's number comes behind the last. */
  readonly mark: readonly string[];
  readonly dimensions: readonly string[];
  /** One where "2 of 3" has no room behind the door's name. */
  readonly whichLines: number;
  /** One where "sticker 1 of 2" has no room behind the size. */
  readonly countLines: number;
}

function stackedIn(words: HeadWords, faces: Faces, { label, margin }: Stock, size: number): Head | null {
  const arrow = size * 0.75;
  const stack = stackOf(words, faces, size, { room: label.width - 2 * margin, arrow });
  if (stack === null) return null;
  const { part, mark, dimensions, whichLines } = stack;
  const sizeLine = part.length + mark.length + whichLines;
  const lines = sizeLine + dimensions.length + stack.countLines;
  const high = size * (ASCENT + LEADING * (lines - 1) + DESCENT);
  if (high > (label.height - 2 * margin) * (size === LEAST_TYPE ? 1 : MOST_SHARE)) return null;
  const right = label.width - margin;
  const lineY = (k: number) => label.height - margin - size * (ASCENT + k * LEADING);
  const at = (x: number, first: number) => (line: string, k: number) =>
    placeLine(setLine(line, faces, size, 'bold'), x, lineY(first + k), 'bold');
  const nameY = lineY(part.length + mark.length - 1);
  const bottom = lineY(lines - 1) - size * DESCENT;
  return {
    size,
    runs: [
      ...part.flatMap(at(margin + arrow + 2, 0)),
      ...mark.slice(0, -1).flatMap(at(margin, part.length)),
      ...dimensions.flatMap(at(margin, sizeLine)),
    ],
    name: { before: mark.at(-1) ?? '', side: 'left', x: margin, y: nameY, size },
    arrow: { x: margin, y: lineY(0), width: arrow, height: arrow },
    which: { right, y: lineY(sizeLine - 1), size: smallType(size) },
    count: { right, y: lineY(lines - 1), size: LEAST_TYPE },
    corner: { x: right, y: bottom, width: 0, height: 0 },
    bottom,
  };
}

function smallType(size: number): number {
  return Math.max(LEAST_TYPE, size * 0.65);
}

/** What stands on which lines; null where something has no room. */
function stackOf(
  { text, widest, counted, last }: HeadWords,
  faces: Faces,
  size: number,
  { room, arrow }: { readonly room: number; readonly arrow: number },
): Stack | null {
  const least = size === LEAST_TYPE;
  const which = faces.regular.width(widest, smallType(size));
  const count = faces.bold.width(counted, LEAST_TYPE);
  const fits = (wide: number) => (line: string) => setLine(line, faces, size, 'bold').width <= wide;
  const part = broken(text.part.split(' '), ' ', fits(room - arrow - 2), least);
  const named = broken(text.mark.split(' '), ' ', fits(room), least);
  const dimensions = broken(text.size.split(' × '), ' × ', fits(room), false);
  if (part === null || named === null || dimensions === null || which > room || count > room) return null;
  const number = faces.bold.width(`-${last}`, size);
  const behind = (lines: readonly string[]) => faces.bold.width(lines.at(-1) ?? '', size) + number;
  const mark = behind(named) > room ? [...named, ''] : named;
  const lastSize = setLine(dimensions.at(-1) ?? '', faces, size, 'bold').width;
  return {
    part,
    mark,
    dimensions,
    whichLines: behind(mark) + 3 + which > room ? 1 : 0,
    countLines: counted !== '' && lastSize + 3 + count > room ? 1 : 0,
  };
}

type Fits = (line: string) => boolean;

/** Words on as few lines as they go; a word longer than a line is broken anywhere if it may be. Null where it has no room. */
function broken(words: readonly string[], between: string, fits: Fits, anywhere: boolean): string[] | null {
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
    if (!fits(whole) && !anywhere) return null;
    const pieces = inPieces(whole, fits);
    line = pieces.at(-1) ?? '';
    if (!fits(line)) return null;
    lines.push(...pieces.slice(0, -1));
  }
  return [...lines, line];
}
