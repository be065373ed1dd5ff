import { type SizeOf, type StockSpec, type Stocks, BUILT_IN_STOCKS, inUnits } from '#core/stickers/stock.ts';
import type { Size } from '../pdf/box.ts';
import type { Length } from '#core/length/length.ts';

/** A stock in points (72 to the inch), ready to be printed on. */
export interface Stock {
  readonly name: string;
  readonly spec: StockSpec;
  readonly page: Size;
  readonly label: Size;
  readonly columns: number;
  readonly rows: number;
  readonly left: number;
  readonly top: number;
  readonly pitchX: number;
  readonly pitchY: number;
  /** What stays white at a sticker's edges. */
  readonly margin: number;
  readonly dpi: number;
  readonly adjust: {
    readonly right: number;
    readonly down: number;
    readonly across: number;
    readonly along: number;
  };
}

/** The stocks by name that come with the program. */
export const STOCKS: Stocks = BUILT_IN_STOCKS;

const MARGIN = 4;
/** How far a text's box must stand in from the edges so as to clear a round corner, for each unit of its radius: 1 - √½. */
const CORNER = 0.3;

/** A stock by name among the built-in ones and the shop's; null when there is none of that name. */
export function stockNamed(name: string, stocks: Stocks = STOCKS): Stock | null {
  const spec = Object.hasOwn(stocks, name) ? stocks[name] : undefined;
  return spec === undefined ? null : inPoints(name, spec);
}

/** A roll is a page of one sticker. */
function inPoints(name: string, spec: StockSpec): Stock {
  const points = (value: Length) => inUnits(value, spec.units, 'in').valueOf() * 72;
  const size = ({ width, height }: SizeOf): Size => ({ width: points(width), height: points(height) });
  const label = size(spec.label);
  const margin = Math.max(MARGIN, points(spec.corner) * CORNER);
  const shared = { name, spec, label, margin, dpi: spec.dpi, adjust: adjustment(spec, points) };
  if (spec.kind === 'roll')
    return { ...shared, page: label, columns: 1, rows: 1, left: 0, top: 0, pitchX: 0, pitchY: 0 };
  const { columns, rows } = spec;
  const [left, top] = [points(spec.left), points(spec.top)];
  const [pitchX, pitchY] = [points(spec.pitchX), points(spec.pitchY)];
  return { ...shared, page: size(spec.page), columns, rows, left, top, pitchX, pitchY };
}

function adjustment({ adjust }: StockSpec, points: (value: Length) => number): Stock['adjust'] {
  if (adjust === undefined) return { right: 0, down: 0, across: 1, along: 1 };
  const { right, down, across, along } = adjust;
  return { right: points(right), down: points(down), across: across.valueOf(), along: along.valueOf() };
}

/** How many stickers a page of this stock holds. */
export function perPage(stock: Stock): number {
  return stock.columns * stock.rows;
}

/**
 * Where the sticker at a position (from 0) stands on its page: its lower left corner. What the printer stretches is taken
 * back, and what it moves, is moved back; the sticker itself keeps its size, so that bars stay whole dots.
 */
export function placeOn(stock: Stock, position: number): { readonly x: number; readonly y: number } {
  const column = position % stock.columns;
  const row = Math.floor(position / stock.columns);
  const { right, down, across, along } = stock.adjust;
  return {
    x: (stock.left + column * stock.pitchX) / across + right,
    y: stock.page.height - (stock.top + row * stock.pitchY + stock.label.height) / along - down,
  };
}
