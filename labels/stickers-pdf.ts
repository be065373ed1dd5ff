import type { Plan } from '#core/plan/plan.ts';
import { say } from '#core/words/say.ts';
import { newDocument } from './face.ts';
import { PageStream } from './page-stream.ts';
import { isStock, pageOf, perPage, placeOn, type Stock, STOCKS } from './stock.ts';
import { layOutSticker, type StickerLayout } from './sticker-layout.ts';
import { countMarks, stickerText } from './sticker-text.ts';
import type { SymbolKind } from './symbol.ts';

export interface StickerOptions {
  readonly stock: string;
  readonly symbol?: SymbolKind;
  /** Only the parts with these codes, in the plan's order. */
  readonly codes?: readonly string[];
  /** The first free position of a part-used sheet, from 1: row by row from the top left. */
  readonly from?: number;
}

export type Stickers =
  | {
      readonly ok: true;
      readonly pdf: Uint8Array;
      readonly parts: number;
      readonly stickers: number;
      readonly pages: number;
      readonly doubled: readonly string[];
    }
  | { readonly ok: false; readonly fault: 'stock-unknown'; readonly stocks: readonly string[] }
  | { readonly ok: false; readonly fault: 'codes-unknown'; readonly codes: readonly string[] }
  | { readonly ok: false; readonly fault: 'position' | 'symbol' | 'text'; readonly message: string };

/**
 * The stickers of a job as a PDF, one for each part; a part whose notes do not fit gets a second one, and is named in
 * `doubled`. The same plan gives byte for byte the same PDF.
 */
export async function stickersPdf(plan: Plan, options: StickerOptions): Promise<Stickers> {
  if (!isStock(options.stock)) return { ok: false, fault: 'stock-unknown', stocks: Object.keys(STOCKS) };
  const stock: Stock = STOCKS[options.stock];
  const kind = options.symbol ?? 'code128';
  const start = (options.from ?? 1) - 1;
  if (start < 0 || start >= perPage(stock))
    return {
      ok: false,
      fault: 'position',
      message: `a sheet of ${options.stock} has positions 1 to ${perPage(stock)}; got ${start + 1}`,
    };
  const asked = options.codes === undefined ? null : new Set(options.codes);
  const counts = countMarks(plan);
  const parts = plan.doors.flatMap((door) =>
    door.parts.filter(({ code }) => asked === null || asked.delete(code)).map((part) => ({ door, part })),
  );
  if (asked !== null && asked.size > 0) return { ok: false, fault: 'codes-unknown', codes: [...asked] };
  const { document, faces } = await newDocument(say('paper.title', { job: plan.job }));
  const laid: StickerLayout[] = [];
  const doubled: string[] = [];
  for (const { door, part } of parts) {
    const layout = layOutSticker(stickerText(plan, door, part, counts), stock, kind, faces);
    if (!layout.ok)
      return {
        ok: false,
        fault: layout.reason,
        message: noRoom(layout.reason, kind, options.stock, `${door.door} ${part.part}`),
      };
    if (layout.stickers.length > 1) doubled.push(part.code);
    laid.push(...layout.stickers);
  }
  let page = new PageStream(faces);
  let position = start;
  let pages = 0;
  const finish = () => {
    page.finish(document, pageOf(stock));
    pages += 1;
    page = new PageStream(faces);
    position = 0;
  };
  for (const sticker of laid) {
    if (position >= perPage(stock)) finish();
    draw(page, sticker, placeOn(stock, position), stock.dpi);
    position += 1;
  }
  if (position > 0 || pages === 0) finish();
  return {
    ok: true,
    pdf: await document.save({ useObjectStreams: true }),
    parts: parts.length,
    stickers: laid.length,
    pages,
    doubled,
  };
}

function noRoom(reason: 'symbol' | 'text', kind: SymbolKind, stock: string, where: string): string {
  return reason === 'symbol'
    ? `${where}: a ${kind} that a scanner can read does not fit ${stock}`
    : `${where}: the text does not fit ${stock} in type that can be read`;
}

function draw(
  page: PageStream,
  { runs, symbol, arrow }: StickerLayout,
  at: { readonly x: number; readonly y: number },
  dpi: number,
): void {
  for (const { text, x, y, size, weight } of runs) page.text(text, at.x + x, at.y + y, size, weight);
  page.symbol(symbol.bars, at.x + symbol.x, at.y + symbol.y, symbol.dots, dpi, symbol.height);
  const [x, y, h] = [at.x + arrow.x, at.y + arrow.y, arrow.height];
  page.fill([
    [x - 0.7, y],
    [x + 0.7, y],
    [x + 0.7, y + h * 0.5],
    [x + 3, y + h * 0.5],
    [x, y + h],
    [x - 3, y + h * 0.5],
    [x - 0.7, y + h * 0.5],
  ]);
}
