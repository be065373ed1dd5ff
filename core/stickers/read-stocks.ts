import type { Fields } from '../fields/shape.ts';
import {
  type FaultList,
  isTree,
  join,
  readShape,
  refuseUnknown,
  report,
  type Reported,
} from '../fields/read-shape.ts';
import { length, type Length, over, smaller, sum, times, ZERO } from '../length/length.ts';
import { kindOf } from '../fields/got.ts';
import type { FaultId } from '../fields/fault.ts';
import { printLength } from '../length/print-length.ts';
import { typeLength } from '../length/type-length.ts';
import type { Units } from '../length/units.ts';
import { type Adjustment, BUILT_IN_STOCKS, type SizeOf, type StockSpec, type Stocks } from './stock.ts';

const positive = { kind: 'length', positive: true } as const;
const signed = { kind: 'length', signed: true } as const;
const size = { kind: 'group', whole: true, fields: { width: positive, height: positive } } as const;
const check = { kind: 'group', whole: true, fields: { printed: positive, of: positive } } as const;
const ADJUST = {
  kind: 'group',
  fields: { right: signed, down: signed, across: check, along: check },
} as const;
const SHARED = { label: size, corner: { kind: 'length' } } as const;
const SHEET = {
  ...SHARED,
  page: size,
  left: { kind: 'length' },
  top: { kind: 'length' },
  pitchX: positive,
  pitchY: positive,
} as const satisfies Fields;
const ROLL = { ...SHARED, gap: { kind: 'length' } } as const satisfies Fields;
const PLAIN = ['kind', 'units', 'dpi', 'adjust'];

const MOST_STOCKS = 50;
const MOST_COUNT = 50;
const DPI = { sheet: 600, roll: 203, least: 150, most: 2400 } as const;
const NAME = /^[a-z0-9][a-z0-9-]{0,39}$/;

/**
 * The shop's own stocks by name, as they stand in its profile; sizes in a stock's `units`, or else the profile's. A built-in stock's name
 * may stand here with `adjust` alone. Refuses stickers that overlap or leave their page, and corners rounder than the sticker.
 */
export function readStocks(input: unknown, path: string, units: Units, list: FaultList): Stocks {
  if (!isTree(input)) {
    report(list, path, 'type.stocks', { got: kindOf(input) });
    return {};
  }
  const names = Object.keys(input);
  if (names.length > MOST_STOCKS) {
    report(list, path, 'too-many', { most: MOST_STOCKS, count: names.length });
    return {};
  }
  return Object.fromEntries(
    names.flatMap((name): [string, StockSpec][] => {
      const stock = readStock(input[name], name, join(path, name.slice(0, 40)), units, list);
      return stock === null ? [] : [[name, stock]];
    }),
  );
}

function readStock(
  input: unknown,
  name: string,
  path: string,
  units: Units,
  list: FaultList,
): StockSpec | null {
  if (!NAME.test(name)) {
    report(list, path, 'stock-name');
    return null;
  }
  if (!isTree(input)) {
    report(list, path, 'type.object', { got: kindOf(input) });
    return null;
  }
  const known: Stocks = BUILT_IN_STOCKS;
  const builtIn = Object.hasOwn(known, name) ? known[name] : undefined;
  const own = input.units === 'in' || input.units === 'mm' ? input.units : (builtIn?.units ?? units);
  if (input.units !== undefined && input.units !== own)
    report(list, join(path, 'units'), 'word.only', { words: { either: ['in', 'mm'] } });
  const adjust = input.adjust === undefined ? undefined : readAdjust(input.adjust, path, own, list);
  if (builtIn !== undefined) {
    refuseUnknown(input, ['units', 'adjust'], path, list);
    return adjust === undefined ? builtIn : { ...builtIn, adjust };
  }
  if (input.kind !== 'sheet' && input.kind !== 'roll') {
    report(list, join(path, 'kind'), 'word.only', { words: { either: ['sheet', 'roll'] } });
    return null;
  }
  const before = list.faults.length + list.dropped;
  const fields: Fields = input.kind === 'sheet' ? SHEET : ROLL;
  const counts = input.kind === 'sheet' ? ['columns', 'rows'] : [];
  refuseUnknown(input, [...Object.keys(fields), ...counts, ...PLAIN], path, list);
  const read: Record<string, unknown> = { corner: ZERO, gap: ZERO };
  for (const [field, shape] of Object.entries(fields))
    if (Object.hasOwn(input, field))
      read[field] = readShape(input[field], shape, join(path, field), own, list);
    else if (read[field] === undefined) report(list, join(path, field), 'required.here');
  for (const field of counts) read[field] = whole(input[field], 1, MOST_COUNT, join(path, field), list);
  const dpi = input.dpi ?? DPI[input.kind];
  read.dpi = whole(dpi, DPI.least, DPI.most, join(path, 'dpi'), list);
  if (list.faults.length + list.dropped > before) return null;
  const stock = {
    ...read,
    kind: input.kind,
    units: own,
    ...(adjust === undefined ? {} : { adjust }),
  } as StockSpec;
  return sound(stock, path, list) ? stock : null;
}

function whole(input: unknown, least: number, most: number, path: string, list: FaultList): number {
  if (typeof input === 'number' && Number.isInteger(input) && input >= least && input <= most) return input;
  report(list, path, 'count', { least, most });
  return least;
}

/** No sticker overlaps another or leaves the page, and none is rounder than it is wide. */
function sound(stock: StockSpec, path: string, list: FaultList): boolean {
  const { label, corner, units } = stock;
  const half = over(smaller(label.width, label.height), 2);
  const refuse = (field: string, id: FaultId, figures: Reported): boolean => {
    report(list, join(path, field), id, figures);
    return false;
  };
  const typed = (value: Length) => typeLength(value, units);
  if (corner.compare(half) > 0) return refuse('corner', 'stock-corner', { half: typed(half) });
  if (stock.kind === 'roll') return true;
  const axes = [
    ['pitchX', 'left', stock.columns, stock.pitchX, label.width, stock.left, stock.page.width],
    ['pitchY', 'top', stock.rows, stock.pitchY, label.height, stock.top, stock.page.height],
  ] as const;
  return axes.every(([pitchName, edge, count, pitch, each, from, page]) => {
    if (count > 1 && pitch.compare(each) < 0)
      return refuse(pitchName, 'stock-overlap', { each: typed(each), pitch: typed(pitch) });
    const end = sum(from, times(pitch, count - 1), each);
    if (end.compare(page) > 0)
      return refuse(edge, 'stock-off-page', { count, end: typed(end), page: typed(page) });
    return true;
  });
}

const ONE = length(1);

/** A printer stretches by a tenth at most; more is a slip of the rule. */
function readAdjust(input: unknown, path: string, units: Units, list: FaultList): Adjustment | undefined {
  const at = join(path, 'adjust');
  const before = list.faults.length + list.dropped;
  const read = readShape(input, ADJUST, at, units, list);
  if (read === undefined || list.faults.length + list.dropped > before) return undefined;
  const { right, down, across, along } = read;
  const ratio = (field: string, line: { printed: Length; of: Length } | undefined): Length => {
    if (line === undefined) return ONE;
    const found = over(line.printed, line.of);
    if (found.compare(length(9, 10)) < 0 || found.compare(length(11, 10)) > 0)
      report(list, join(at, field), 'stock-adjust');
    return found;
  };
  return {
    right: right ?? ZERO,
    down: down ?? ZERO,
    across: ratio('across', across),
    along: ratio('along', along),
  };
}

/** All stocks that there are: the built-in ones, with what the shop says of them, and the shop's own. */
export function allStocks(own: Stocks): Stocks {
  return { ...BUILT_IN_STOCKS, ...own };
}

/** The shop's stocks as its profile holds them. */
export function writeStocks(stocks: Stocks): Record<string, unknown> {
  return Object.fromEntries(Object.entries(stocks).map(([name, stock]) => [name, writeStock(name, stock)]));
}

function writeStock(name: string, stock: StockSpec): Record<string, unknown> {
  const lengths = (fields: Readonly<Record<string, Length>>) =>
    Object.fromEntries(Object.entries(fields).map(([field, value]) => [field, printLength(value)]));
  const sized = ({ width, height }: SizeOf) => lengths({ width, height });
  const { adjust, units } = stock;
  const adjusted =
    adjust === undefined
      ? {}
      : {
          adjust: {
            ...lengths({ right: adjust.right, down: adjust.down }),
            across: lengths({ printed: adjust.across, of: ONE }),
            along: lengths({ printed: adjust.along, of: ONE }),
          },
        };
  if (Object.hasOwn(BUILT_IN_STOCKS, name)) return { units, ...adjusted };
  const shared = { kind: stock.kind, units, label: sized(stock.label), dpi: stock.dpi, ...adjusted };
  if (stock.kind === 'roll') return { ...shared, ...lengths({ gap: stock.gap, corner: stock.corner }) };
  const { left, top, pitchX, pitchY, corner, columns, rows } = stock;
  return {
    ...shared,
    page: sized(stock.page),
    columns,
    rows,
    ...lengths({ left, top, pitchX, pitchY, corner }),
  };
}
