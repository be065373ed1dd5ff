import type { FigureTable, Saying } from '#core/plan/figure.ts';
import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import type { Stocks } from '#core/stickers/stock.ts';
import { say } from '#core/words/say.ts';
import type { SymbolKind } from '../pdf/symbol.ts';
import { newDocument } from '../pdf/typeface.ts';
import { fittingStocks, stocksThatRead } from './fitting-stocks.ts';
import { JobStickers } from './job-stickers.ts';
import { StickerSheets } from './sticker-sheets.ts';
import { perPage, type Stock, stockNamed, STOCKS } from './stock-in-points.ts';

export interface StickerOptions {
  readonly stock: string;
  /** The stocks that there are, the shop's own among them. */
  readonly stocks?: Stocks;
  readonly symbol?: SymbolKind;
  /** Only the parts with these codes, in the plan's order. */
  readonly codes?: readonly string[];
  /** The first free position of a part-used sheet, from 1: row by row from the top left. */
  readonly from?: number;
  /** Told how many of the parts have their stickers, now and then; it may throw to stop. */
  readonly progress?: (made: number, of: number) => void | Promise<void>;
}

/** Parts between one report of the progress and the next: often enough to stop at once, seldom enough to cost nothing. */
const REPORT_EVERY = 20;

/** A part whose sticker does not stay clear on its back, and the stocks that would. */
export interface TooLarge {
  readonly code: string;
  readonly door: string;
  readonly part: string;
  /** `bears`: it outlasts every cut but must be lifted for some; `none`: it does not outlast them. */
  readonly state: 'bears' | 'none';
  readonly fits: readonly string[];
}

export type Stickers =
  | {
      readonly ok: true;
      readonly pdf: Uint8Array;
      readonly parts: number;
      readonly stickers: number;
      readonly pages: number;
      /** Codes of the parts that got two stickers or more. */
      readonly doubled: readonly string[];
      readonly tooLarge: readonly TooLarge[];
    }
  | Refused;

type Refused =
  | { readonly ok: false; readonly fault: 'stock-unknown'; readonly stocks: readonly string[] }
  | { readonly ok: false; readonly fault: 'codes-unknown'; readonly codes: readonly string[] }
  | { readonly ok: false; readonly fault: 'position' | 'symbol' | 'text'; readonly told: Saying };

/** What is asked for, as far as it can be had. */
interface Order {
  readonly ok: true;
  readonly stocks: Stocks;
  readonly stock: Stock;
  readonly kind: SymbolKind;
  /** From 0. */
  readonly start: number;
  readonly parts: readonly { readonly door: PlanDoor; readonly part: PlanPart }[];
}

/**
 * The stickers of a job as a PDF, one for each part; a part whose notes and drawing do not fit gets a second one, and is
 * named in `doubled`. The same plan gives byte for byte the same PDF.
 */
export async function stickersPdf(plan: Plan, options: StickerOptions): Promise<Stickers> {
  const order = orderOf(plan, options);
  if (!order.ok) return order;
  const { parts, stock, stocks, kind } = order;
  const { document, faces } = await newDocument(say('paper.title', { job: plan.job }));
  const job = new JobStickers(plan, stock, kind, faces);
  const sheets = new StickerSheets(document, faces, stock, order.start);
  const fitting = fittingStocks(plan, stocks, kind);
  const doubled: string[] = [];
  const tooLarge: TooLarge[] = [];
  for (const [k, { door, part }] of parts.entries()) {
    if (k % REPORT_EVERY === 0 && k > 0) await options.progress?.(k, parts.length);
    const made = job.of(door, part);
    if (!made.ok) return noRoom(made.reason, order, door, part);
    const { code } = part;
    if (made.stickers.length > 1) doubled.push(code);
    if (made.place !== 'clear')
      tooLarge.push({
        code,
        door: door.door,
        part: part.part,
        state: made.place,
        fits: fitting(door, part, made.key),
      });
    for (const sticker of made.stickers) sheets.put(sticker);
  }
  await options.progress?.(parts.length, parts.length);
  const counts = sheets.close();
  const pdf = await document.save({ useObjectStreams: true });
  return { ok: true, pdf, parts: parts.length, ...counts, doubled, tooLarge };
}

/** The order with its stock and parts found; refused where there is no such stock, position or code. */
function orderOf(plan: Plan, options: StickerOptions): Order | Refused {
  const { stocks = STOCKS, symbol: kind = 'code128' } = options;
  const stock = stockNamed(options.stock, stocks);
  if (stock === null) return { ok: false, fault: 'stock-unknown', stocks: Object.keys(stocks) };
  const start = (options.from ?? 1) - 1;
  if (!Number.isInteger(start) || start < 0 || start >= perPage(stock))
    return noPosition(stock, options.from);
  const asked = options.codes === undefined ? null : new Set(options.codes);
  const parts = plan.doors.flatMap((door) =>
    door.parts.filter(({ code }) => asked === null || asked.delete(code)).map((part) => ({ door, part })),
  );
  if (asked !== null && asked.size > 0) return { ok: false, fault: 'codes-unknown', codes: [...asked] };
  return { ok: true, stocks, stock, kind, start, parts };
}

function noPosition(stock: Stock, from: number | undefined): Refused {
  const figures = { stock: stock.name, last: perPage(stock), from: String(from) };
  return { ok: false, fault: 'position', told: { words: 'paper.no-position', figures } };
}

/** What of a part has no room on the stock; for a symbol, which stocks have it. */
function noRoom(reason: 'symbol' | 'text', order: Order, door: PlanDoor, part: PlanPart): Refused {
  const { kind, stock, stocks } = order;
  const named = { part: { part: part.part, title: true }, door: door.door } as const;
  const where: Saying = { words: 'ui.part-of', figures: named };
  if (reason === 'text')
    return {
      ok: false,
      fault: reason,
      told: { words: 'paper.no-room-text', figures: { where, stock: stock.name } },
    };
  const fits = stocksThatRead(kind, part.code, stocks);
  const figures: FigureTable = {
    where,
    symbol: { words: `paper.symbol-${kind}` },
    stock: stock.name,
    stocks: fits.length === 0 ? { words: 'paper.none-of-them' } : fits.join(', '),
  };
  return { ok: false, fault: reason, told: { words: 'paper.no-room-symbol', figures } };
}
