import { type BarSymbol } from './symbol.ts';

/** Each bar is drawn this much of a dot smaller all round, so that no printer's rounding makes it a dot wider. */
const INSET = 0.02;

const written = new Map<string, string>();

/** A number to four places; the few that occur in symbols are kept as texts. */
function text(whole: number, more: number): string {
  const key = `${whole},${more}`;
  let known = written.get(key);
  if (known === undefined) {
    known = String(Math.round((whole + more) * 10_000) / 10_000);
    written.set(key, known);
  }
  return known;
}

/**
 * A symbol in whole printer dots, its lower left corner moved to the next dot up and right of a place (points from the page's corner).
 * One matrix that makes a module the unit, one path and one fill for all.
 */
export function barOperators(
  symbol: BarSymbol,
  place: { readonly x: number; readonly y: number },
  dots: number,
  dpi: number,
  barHeight?: number,
): string {
  const dot = 72 / dpi;
  const module = dots * dot;
  const high = barHeight === undefined ? module : Math.floor(barHeight / dot) * dot;
  const onDot = (at: number) => Math.ceil(at / dot - 1e-6) * dot;
  const [left, bottom] = [onDot(place.x), onDot(place.y)];
  const insetX = INSET / dots;
  const insetY = (INSET * dot) / high;
  let path = '';
  for (const { x, y, width, height } of symbol.bars)
    path += `${text(x, insetX)} ${text(y, insetY)} ${text(width, -2 * insetX)} ${text(height, -2 * insetY)} re `;
  const matrix = [module, 0, 0, high, left, bottom].map((each) => String(Math.round(each * 1e6) / 1e6));
  return `q ${matrix.join(' ')} cm ${path}f Q`;
}
