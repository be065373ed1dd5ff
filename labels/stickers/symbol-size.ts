import type { Size } from '../pdf/box.ts';
import { dotsPerModule, type SymbolKind, symbolOf } from '../pdf/symbol.ts';
import type { Stock } from './stock-in-points.ts';

/** Dots to a Data Matrix's module of which a smear of one dot leaves enough: libdmtx misses one in six of 3 dots, none of 4 (measured). */
const SURE_DOTS = 4;

/** The lowest bars of a Code 128, in points. */
export const LEAST_BAR = 15;

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
