import bwipjs from 'bwip-js/node';

export type SymbolKind = 'code128' | 'datamatrix';

/** A symbol as dark rectangles in modules, from its lower left corner; no quiet zone in it. */
export interface BarSymbol {
  readonly kind: SymbolKind;
  readonly width: number;
  readonly height: number;
  readonly bars: readonly {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  }[];
  /** Modules to be left white on each side: ISO/IEC 15417 asks for 10, ISO/IEC 16022 for 1. */
  readonly quiet: number;
}

/** The smallest module that is read by hand at arm's length: 0.25 mm (common practice, no source). */
const LEAST_MODULE_MM = 0.25;

/** The last one made: a part asks for its own several times over, and no other part has it. */
let last: { readonly kind: SymbolKind; readonly text: string; readonly symbol: BarSymbol } | null = null;

/** The symbol of a code; bars of a Code 128 are one module high and are stretched by who draws them. */
export function symbolOf(kind: SymbolKind, text: string): BarSymbol {
  if (last?.kind === kind && last.text === text) return last.symbol;
  const symbol = kind === 'code128' ? linear(text) : matrix(text);
  last = { kind, text, symbol };
  return symbol;
}

/** Printer dots that make one module: whole, and at least 0.25 mm; a Data Matrix at least 3. */
export function dotsPerModule(kind: SymbolKind, dpi: number): number {
  const least = Math.ceil((LEAST_MODULE_MM / 25.4) * dpi - 0.01);
  return kind === 'datamatrix' ? Math.max(3, least) : least;
}

function linear(text: string): BarSymbol {
  const widths = (encoded('code128', text) as { readonly sbs?: readonly number[] }).sbs;
  if (widths === undefined) throw new Error(`no Code 128 came of ${text}`);
  const bars: BarSymbol['bars'][number][] = [];
  let x = 0;
  for (const [k, width] of widths.entries()) {
    if (k % 2 === 0) bars.push({ x, y: 0, width, height: 1 });
    x += width;
  }
  return { kind: 'code128', width: x, height: 1, bars, quiet: 10 };
}

function matrix(text: string): BarSymbol {
  const { pixs, pixx, pixy } = encoded('datamatrix', text) as {
    pixs?: readonly number[];
    pixx?: number;
    pixy?: number;
  };
  if (pixs === undefined || pixx === undefined || pixy === undefined)
    throw new Error(`no Data Matrix came of ${text}`);
  const bars: BarSymbol['bars'][number][] = [];
  for (let row = 0; row < pixy; row += 1)
    for (let x = 0; x < pixx;) {
      let end = x;
      while (end < pixx && pixs[row * pixx + end] === 1) end += 1;
      if (end > x) bars.push({ x, y: pixy - 1 - row, width: end - x, height: 1 });
      x = end + 1;
    }
  return { kind: 'datamatrix', width: pixx, height: pixy, bars, quiet: 1 };
}

/** What the encoder makes of a text, before anything is drawn. */
function encoded(kind: SymbolKind, text: string): unknown {
  return bwipjs.raw({ bcid: kind, text })[0];
}
