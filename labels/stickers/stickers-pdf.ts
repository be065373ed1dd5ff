import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { labelIn, stickerPlace } from '#core/stickers/sticker-place.ts';
import type { Stocks } from '#core/stickers/stock.ts';
import { partName } from '#core/telling/names.ts';
import { say } from '#core/words/say.ts';
import { newDocument } from '../pdf/typeface.ts';
import { PageStream } from '../pdf/page-stream.ts';
import { StickerLayouts } from './sticker-layouts.ts';
import { symbolFits } from './sticker-code.ts';
import { perPage, placeOn, type Stock, stockNamed, STOCKS } from '../pdf/stock.ts';
import { countMarks } from './sticker-text.ts';
import type { SymbolKind } from '../pdf/symbol.ts';

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
  | { readonly ok: false; readonly fault: 'stock-unknown'; readonly stocks: readonly string[] }
  | { readonly ok: false; readonly fault: 'codes-unknown'; readonly codes: readonly string[] }
  | { readonly ok: false; readonly fault: 'position' | 'symbol' | 'text'; readonly message: string };

/**
 * The stickers of a job as a PDF, one for each part; a part whose notes and drawing do not fit gets a second one, and is
 * named in `doubled`. The same plan gives byte for byte the same PDF.
 */
export async function stickersPdf(plan: Plan, options: StickerOptions): Promise<Stickers> {
  const stocks = options.stocks ?? STOCKS;
  const stock = stockNamed(options.stock, stocks);
  if (stock === null) return { ok: false, fault: 'stock-unknown', stocks: Object.keys(stocks) };
  const kind = options.symbol ?? 'code128';
  const start = (options.from ?? 1) - 1;
  if (!Number.isInteger(start) || start < 0 || start >= perPage(stock))
    return {
      ok: false,
      fault: 'position',
      message: say('paper.no-position', {
        stock: stock.name,
        last: perPage(stock),
        from: String(options.from),
      }),
    };
  const asked = options.codes === undefined ? null : new Set(options.codes);
  const parts = plan.doors.flatMap((door) =>
    door.parts.filter(({ code }) => asked === null || asked.delete(code)).map((part) => ({ door, part })),
  );
  if (asked !== null && asked.size > 0) return { ok: false, fault: 'codes-unknown', codes: [...asked] };
  const { document, faces } = await newDocument(say('paper.title', { job: plan.job }));
  const layouts = new StickerLayouts(plan, stock, kind, faces, countMarks(plan));
  const doubled: string[] = [];
  const tooLarge: TooLarge[] = [];
  const fitting = fittingStocks(plan, stocks, kind);
  let page = new PageStream(faces);
  let position = start;
  let pages = 0;
  let stickers = 0;
  const finish = () => {
    page.finish(document, stock.page);
    pages += 1;
    page = new PageStream(faces);
    position = 0;
  };
  for (const [k, { door, part }] of parts.entries()) {
    if (k % REPORT_EVERY === 0 && k > 0) await options.progress?.(k, parts.length);
    const made = layouts.of(door, part);
    if (!made.ok)
      return {
        ok: false,
        fault: made.reason,
        message: noRoom(
          made.reason,
          kind,
          stock,
          say('ui.part-of', { part: partName(part.part), door: door.door }),
          part.code,
          stocks,
        ),
      };
    if (made.stickers.length > 1) doubled.push(part.code);
    if (made.place !== 'clear')
      tooLarge.push({
        code: part.code,
        door: door.door,
        part: part.part,
        state: made.place,
        fits: fitting(door, part, made.key),
      });
    for (const sticker of made.stickers) {
      if (position >= perPage(stock)) finish();
      sticker(page, placeOn(stock, position));
      position += 1;
      stickers += 1;
    }
  }
  await options.progress?.(parts.length, parts.length);
  if (position > 0 || pages === 0) finish();
  const pdf = await document.save({ useObjectStreams: true });
  return { ok: true, pdf, parts: parts.length, stickers, pages, doubled, tooLarge };
}

/** For each part, told once for all that are alike: the stocks on which its sticker stays clear and its symbol is read. */
function fittingStocks(plan: Plan, stocks: Stocks, kind: SymbolKind) {
  const known = new Map<string, readonly string[]>();
  return (door: PlanDoor, part: PlanPart, key: string): readonly string[] => {
    const kept = known.get(key);
    if (kept !== undefined) return kept;
    const fits = Object.entries(stocks).flatMap(([name, spec]) => {
      const inPoints = stockNamed(name, stocks);
      const clear = stickerPlace(door, part, plan.units, labelIn(spec, plan.units)).state === 'clear';
      return clear && inPoints !== null && symbolFits(kind, part.code, inPoints) ? [name] : [];
    });
    known.set(key, fits);
    return fits;
  };
}

function noRoom(
  reason: 'symbol' | 'text',
  kind: SymbolKind,
  stock: Stock,
  where: string,
  code: string,
  stocks: Stocks,
): string {
  if (reason === 'text') return say('paper.no-room-text', { where, stock: stock.name });
  const fits = Object.keys(stocks).filter((name) => {
    const other = stockNamed(name, stocks);
    return other !== null && symbolFits(kind, code, other);
  });
  return say('paper.no-room-symbol', {
    where,
    symbol: say(`paper.symbol-${kind}`),
    stock: stock.name,
    stocks: fits.length === 0 ? say('paper.none-of-them') : fits.join(', '),
  });
}
