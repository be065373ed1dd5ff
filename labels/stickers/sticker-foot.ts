import { LEAST_TYPE, type TextRun } from '../pdf/set-type.ts';
import { type BarSymbol, type SymbolKind, symbolOf } from '../pdf/symbol.ts';
import type { Faces } from '../pdf/typeface.ts';
import type { Stock } from './stock-in-points.ts';
import { LEAST_BAR } from './symbol-size.ts';

/** A symbol at its place on a sticker, in points from the sticker's lower left corner. */
export interface PlacedSymbol {
  readonly bars: BarSymbol;
  readonly x: number;
  readonly y: number;
  readonly dots: number;
  /** Height of the bars; a Data Matrix has its own. */
  readonly height: number | undefined;
}

/** What the foot leaves above and beside itself: the notes' lower and right ends, in points from the lower left corner. */
export interface FootRoom {
  readonly bottom: number;
  readonly right: number;
}

/** The foot of a sticker: the symbol, the code in plain type, and what is left above and beside for the rest. */
export interface CodeFoot extends FootRoom {
  readonly symbol: PlacedSymbol;
  /** The code in plain type: on one line, or on two where that is too long. */
  readonly code: readonly TextRun[];
}

const MOST_BAR = 28;
/** The code's type at most: as large as the head's would be. */
const mostCode = (stock: Stock) => Math.min(14, stock.label.height * 0.16);
const LEAST_CODE = 8;
/** Where there is no room for that. */
const SMALL_CODE = LEAST_TYPE;
/** How far the tail of a Q hangs below the line, in sizes of the type. */
const TAIL = 0.06;
/** Room for the code under its bars: with most codes enough for type of 8 pt; one of wide letters takes what that needs. */
const UNDER_BARS = 60;
const HAIR = 0.01;

/** The foot of a code's sticker with so many dots to a module; null where the code in plain type has no room. */
export function codeFoot(
  code: string,
  stock: Stock,
  kind: SymbolKind,
  dots: number,
  faces: Faces,
): CodeFoot | null {
  return kind === 'code128' ? linearFoot(code, stock, dots, faces) : matrixFoot(code, stock, dots, faces);
}

const spaced = (code: string) => `${code.slice(0, 5)} ${code.slice(5)}`;

/** The largest type in which a code in bold fits a room; null where that is less than the least. */
function sizeIn(room: number, text: string, stock: Stock, faces: Faces, least = LEAST_CODE): number | null {
  const wide = faces.bold.width(text, 1);
  const size = Math.min(mostCode(stock), Math.floor((room / wide) * 2) / 2);
  return size < least ? null : size;
}

function codeRun(text: string, size: number, x: number, y: number): TextRun {
  return { text, x, y: y + size * TAIL, size, weight: 'bold' };
}

/** Bars along the foot, the code beside them where there is room, else under them. */
function linearFoot(code: string, stock: Stock, dots: number, faces: Faces): CodeFoot | null {
  const { label, margin, dpi } = stock;
  const bars = symbolOf('code128', code);
  const module = (dots * 72) / dpi;
  const long = (bars.width + 2 * bars.quiet) * module;
  const quiet = bars.quiet * module;
  const height = Math.max(LEAST_BAR, Math.min(MOST_BAR, label.height * 0.2));
  const right = label.width - margin;
  const footAt = (y: number, text: TextRun): CodeFoot => ({
    symbol: { bars, x: quiet, y, dots, height },
    code: [text],
    bottom: y + height + 1.5,
    right,
  });
  const beside = sizeIn(right - long, spaced(code), stock, faces);
  if (beside !== null) return footAt(margin, codeRun(spaced(code), beside, long, margin));
  const room = Math.max(UNDER_BARS, faces.bold.width(spaced(code), LEAST_CODE) + HAIR);
  const under = sizeIn(Math.min(right - quiet, room), spaced(code), stock, faces);
  if (under === null) return null;
  return footAt(margin + under * 0.85, codeRun(spaced(code), under, Math.max(margin, quiet), margin));
}

/** A Data Matrix in the lower right corner, the code in plain type along the foot beside it. */
function matrixFoot(code: string, stock: Stock, dots: number, faces: Faces): CodeFoot | null {
  const { label, margin, dpi } = stock;
  const bars = symbolOf('datamatrix', code);
  const module = (dots * 72) / dpi;
  // A dot to spare, since the symbol is moved on to the next one.
  const x = label.width - margin - bars.width * module - module / dots;
  const right = x - Math.max(bars.quiet * module, 3);
  const symbol = { bars, x, y: margin, dots, height: undefined };
  const beside = sizeIn(right - margin, spaced(code), stock, faces);
  if (beside !== null) {
    const text = codeRun(spaced(code), beside, margin, margin);
    return { symbol, code: [text], bottom: margin + beside * 0.8 + 1, right };
  }
  const lines = spaced(code).split(' ');
  const sizes = lines.map((line) => sizeIn(right - margin, line, stock, faces, SMALL_CODE) ?? 0);
  const size = Math.min(LEAST_CODE * 1.25, ...sizes);
  if (size < SMALL_CODE) return null;
  return {
    symbol,
    code: lines.map((line, k) => codeRun(line, size, margin, margin + (lines.length - 1 - k) * size)),
    bottom: margin + size * 1.8 + 1,
    right,
  };
}
