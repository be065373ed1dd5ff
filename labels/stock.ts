/** A stock of stickers, described by its sizes. All sizes in points (72 to the inch). */
export type Stock =
  | {
      readonly kind: 'sheet';
      readonly page: Size;
      readonly label: Size;
      readonly columns: number;
      readonly rows: number;
      /** From the page's left and top edge to the first sticker. */
      readonly left: number;
      readonly top: number;
      /** From one sticker's left or top edge to the next one's. */
      readonly pitchX: number;
      readonly pitchY: number;
      readonly dpi: number;
    }
  | { readonly kind: 'roll'; readonly label: Size; readonly dpi: number };

export interface Size {
  readonly width: number;
  readonly height: number;
}

const INCH = 72;
const MM = 72 / 25.4;
const roll = (width: number, height: number): Stock => ({
  kind: 'roll',
  label: { width: width * INCH, height: height * INCH },
  dpi: 203,
});

/** The built-in stocks. Sizes are common practice, no source. */
export const STOCKS = {
  'letter-3x10': {
    kind: 'sheet',
    page: { width: 8.5 * INCH, height: 11 * INCH },
    label: { width: 2.625 * INCH, height: 1 * INCH },
    columns: 3,
    rows: 10,
    left: 0.1875 * INCH,
    top: 0.5 * INCH,
    pitchX: 2.75 * INCH,
    pitchY: 1 * INCH,
    dpi: 600,
  },
  'a4-3x8': {
    kind: 'sheet',
    page: { width: 210 * MM, height: 297 * MM },
    label: { width: 70 * MM, height: 36 * MM },
    columns: 3,
    rows: 8,
    left: 0,
    top: 4.5 * MM,
    pitchX: 70 * MM,
    pitchY: 36 * MM,
    dpi: 600,
  },
  'roll-2x1': roll(2, 1),
  'roll-3x1': roll(3, 1),
  'roll-4x2': roll(4, 2),
} as const satisfies Readonly<Record<string, Stock>>;

export type StockName = keyof typeof STOCKS;

export function isStock(name: string): name is StockName {
  return Object.hasOwn(STOCKS, name);
}

/** How many stickers a page of this stock holds. */
export function perPage(stock: Stock): number {
  return stock.kind === 'sheet' ? stock.columns * stock.rows : 1;
}

/** Where the sticker at a position (from 0) stands on its page: its lower left corner. */
export function placeOn(stock: Stock, position: number): { readonly x: number; readonly y: number } {
  if (stock.kind === 'roll') return { x: 0, y: 0 };
  const column = position % stock.columns;
  const row = Math.floor(position / stock.columns);
  return {
    x: stock.left + column * stock.pitchX,
    y: stock.page.height - stock.top - row * stock.pitchY - stock.label.height,
  };
}

/** The page that a stock is printed on. */
export function pageOf(stock: Stock): Size {
  return stock.kind === 'sheet' ? stock.page : stock.label;
}
