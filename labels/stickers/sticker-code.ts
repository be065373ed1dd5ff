import type { Faces } from '../pdf/typeface.ts';
import { LEAST_TYPE, type TextRun } from '../pdf/set-type.ts';
import type { Size, Stock } from '../pdf/stock.ts';
import { type BarSymbol, dotsPerModule, type SymbolKind, symbolOf } from '../pdf/symbol.ts';

/** A symbol at its place on a sticker, in points from the sticker's lower left corner. */
export interface PlacedSymbol {
  readonly bars: BarSymbol;
  readonly x: number;
  readonly y: number;
  readonly dots: number;
  /** Height of the bars; a Data Matrix has its own. */
  readonly height: number | undefined;
}

/** The foot of a sticker: the symbol, the code in plain type, and what is left above and beside for the rest. */
export interface CodeFoot {
  readonly symbol: PlacedSymbol;
  /** The code in plain type: on one line, or on two where that is too long. */
  readonly code: readonly TextRun[];
  /** The notes' lower and right ends. */
  readonly bottom: number;
  readonly right: number;
}

/** Dots to a Data Matrix's module of which a smear of one dot leaves enough: libdmtx misses one in six of 3 dots, none of 4 (measured). */
const SURE_DOTS = 4;
const LEAST_BAR = 15;
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

/** The smallest size of a symbol with its quiet zones on a stock, in points; bars of a Code 128 at their lowest. */
export function symbolSize(kind: SymbolKind, text: string, dpi: number, dots: number): Size {
  const bars = symbolOf(kind, text);
  const module = (dots * 72) / dpi;
  return {
    width: (bars.width + 2 * bars.quiet) * module,
    height: kind === 'code128' ? LEAST_BAR : (bars.height + 2 * bars.quiet) * module,
  };
}

/** Can a scanner read this symbol on this stock: modules of 0.25 mm at least, with its quiet zones on the sticker? */
export function symbolFits(kind: SymbolKind, text: string, { label, dpi, margin }: Stock): boolean {
  const { width, height } = symbolSize(kind, text, dpi, dotsPerModule(kind, dpi));
  return width <= label.width && height + 2 * margin <= label.height;
}

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

/**
 * Dots to a module, the largest first, from what a sticker has plenty of room for down to the least; for a Data Matrix
 * rather more, so that it stands a smear.
 */
export function dotsToTry(kind: SymbolKind, code: string, { label, dpi }: Stock): number[] {
  const least = dotsPerModule(kind, dpi);
  const found: number[] = [];
  for (let dots = least * 2; dots >= least; dots -= 1) {
    const { width, height } = symbolSize(kind, code, dpi, dots);
    const share =
      kind === 'code128' ? width / label.width : Math.max(width / label.width, height / label.height);
    const most = kind === 'code128' ? 0.62 : dots <= SURE_DOTS ? 0.6 : 0.4;
    if (share <= most || dots === least) found.push(dots);
  }
  return found;
}

const spaced = (code: string) => `${code.slice(0, 5)} ${code.slice(5)}`;

/** A code in bold type as large as its room allows. */
function codeUpTo(
  text: string,
  stock: Stock,
  faces: Faces,
  room: number,
  least = LEAST_CODE,
): { width: number; size: number } | null {
  const wide = faces.bold.width(text, 1);
  const size = Math.min(mostCode(stock), Math.floor((room / wide) * 2) / 2);
  return size < least ? null : { width: wide * size, size };
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
  const high = Math.max(LEAST_BAR, Math.min(MOST_BAR, label.height * 0.2));
  const right = label.width - margin;
  const beside = codeUpTo(spaced(code), stock, faces, right - long);
  if (beside !== null)
    return {
      symbol: { bars, x: quiet, y: margin, dots, height: high },
      code: [codeRun(spaced(code), beside.size, long, margin)],
      bottom: margin + high + 1.5,
      right,
    };
  const room = Math.max(UNDER_BARS, faces.bold.width(spaced(code), LEAST_CODE) + HAIR);
  const under = codeUpTo(spaced(code), stock, faces, Math.min(right - quiet, room));
  if (under === null) return null;
  const x = Math.max(margin, quiet);
  return {
    symbol: { bars, x: quiet, y: margin + under.size * 0.85, dots, height: high },
    code: [codeRun(spaced(code), under.size, x, margin)],
    bottom: margin + under.size * 0.85 + high + 1.5,
    right,
  };
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
  const beside = codeUpTo(spaced(code), stock, faces, right - margin);
  if (beside !== null)
    return {
      symbol,
      code: [codeRun(spaced(code), beside.size, margin, margin)],
      bottom: margin + beside.size * 0.8 + 1,
      right,
    };
  const lines = spaced(code).split(' ');
  const sizes = lines.map((line) => codeUpTo(line, stock, faces, right - margin, SMALL_CODE)?.size ?? 0);
  const size = Math.min(LEAST_CODE * 1.25, ...sizes);
  if (size < SMALL_CODE) return null;
  return {
    symbol,
    code: lines.map((line, k) => codeRun(line, size, margin, margin + (lines.length - 1 - k) * size)),
    bottom: margin + size * 1.8 + 1,
    right,
  };
}
