import { type Length, length, over, times } from '../length/length.ts';
import type { Units } from '../length/units.ts';

/** A size, in the unit of the stock. */
export interface SizeOf {
  readonly width: Length;
  readonly height: Length;
}

/** What a printer makes of a page, as measured on the calibration page: how far it is moved, and how long a 6 in (or 150 mm) line comes out. */
export interface Adjustment {
  /** Move everything to the right and down; negative: to the left and up. */
  readonly right: Length;
  readonly down: Length;
  /** Printed length of the check line across the page and along it, over its true length. */
  readonly across: Length;
  readonly along: Length;
}

/** A stock of stickers, described by its sizes alone, in its own units. */
export type StockSpec = SheetSpec | RollSpec;

/** A sheet of stickers: how many, how large, and where they stand. */
export interface SheetSpec {
  readonly kind: 'sheet';
  readonly units: Units;
  readonly page: SizeOf;
  readonly label: SizeOf;
  readonly columns: number;
  readonly rows: number;
  /** From the page's left and top edge to the first sticker. */
  readonly left: Length;
  readonly top: Length;
  /** From one sticker's left or top edge to the next one's. */
  readonly pitchX: Length;
  readonly pitchY: Length;
  /** Radius of a sticker's corners. */
  readonly corner: Length;
  readonly dpi: number;
  readonly adjust?: Adjustment;
}

/** A roll of stickers: their size and how finely it is printed. */
export interface RollSpec {
  readonly kind: 'roll';
  readonly units: Units;
  readonly label: SizeOf;
  /** Between one sticker and the next; the printer finds it by itself. */
  readonly gap: Length;
  readonly corner: Length;
  readonly dpi: number;
  readonly adjust?: Adjustment;
}

/** Every stock by its name. */
export type Stocks = Readonly<Record<string, StockSpec>>;

const roll = (width: number, height: number): RollSpec => ({
  kind: 'roll',
  units: 'in',
  label: { width: length(width), height: length(height) },
  gap: length(1, 8),
  corner: length(1, 16),
  dpi: 203,
});

/** The built-in stocks. Sizes are common practice, no source. */
export const BUILT_IN_STOCKS = {
  'letter-3x10': {
    kind: 'sheet',
    units: 'in',
    page: { width: length(17, 2), height: length(11) },
    label: { width: length(21, 8), height: length(1) },
    columns: 3,
    rows: 10,
    left: length(3, 16),
    top: length(1, 2),
    pitchX: length(11, 4),
    pitchY: length(1),
    corner: length(1, 16),
    dpi: 600,
  },
  'a4-3x8': {
    kind: 'sheet',
    units: 'mm',
    page: { width: length(210), height: length(297) },
    label: { width: length(70), height: length(36) },
    columns: 3,
    rows: 8,
    left: length(0),
    top: length(9, 2),
    pitchX: length(70),
    pitchY: length(36),
    corner: length(0),
    dpi: 600,
  },
  'roll-2x1': roll(2, 1),
  'roll-3x1': roll(3, 1),
  'roll-4x2': roll(4, 2),
} as const satisfies Stocks;

const MM_PER_INCH = length(127, 5);

/** A length in other units: 1 in is 25.4 mm exactly. */
export function inUnits(value: Length, from: Units, to: Units): Length {
  if (from === to) return value;
  return from === 'in' ? times(value, MM_PER_INCH) : over(value, MM_PER_INCH);
}
