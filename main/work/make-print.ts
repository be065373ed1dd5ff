import type { PaperKind, PrintRequest } from '#core/api/prints-api.ts';
import { readPartCode } from '#core/codes/read-code.ts';
import type { Saying } from '#core/plan/figure.ts';
import type { Plan } from '#core/plan/plan.ts';
import type { Stocks } from '#core/stickers/stock.ts';
import { stickerSays } from '#core/stickers/sticker-says.ts';
import { say } from '#core/words/say.ts';
import { calibrationPdf } from '#labels/stickers/calibration-pdf.ts';
import { PAPERS } from '#labels/papers/paper-size.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { stockNamed } from '#labels/stickers/stock-in-points.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import type { Progress } from '../printing/print-desk.ts';
import { type Paper, refused, type Refused } from '../printing/printer.ts';
import { planOfPaper } from './plan-of-paper.ts';
import { planFrom, type PlanSource } from './plan-source.ts';
import { shopStocks } from './shop-stocks.ts';
import type { PrintMade, Tasks } from './tasks.ts';

/** The stock that is meant where none is named. */
export const DEFAULT_STOCK = 'letter-3x10';

/** Makes what a print asks for, or says why it cannot be made. */
export async function makePrint(
  { source, tools, request }: Tasks['print']['asked'],
  progress: Progress,
): Promise<PrintMade | Refused> {
  await progress(0, 0);
  const stocks = shopStocks(tools);
  if (request.kind === 'calibration') return calibration(stocks, request.stock, progress);
  if (source === null) throw new Error('what is printed of a job is made from its plan');
  return request.kind === 'stickers'
    ? stickers(source, stocks, request, progress)
    : papers(source, { ...request, kind: request.kind }, progress);
}

/** The page to hold against a stock; it carries no stickers, so that nothing is kept as printed. */
async function calibration(
  stocks: Stocks,
  stock = DEFAULT_STOCK,
  progress: Progress,
): Promise<PrintMade | Refused> {
  const pdf = await calibrationPdf(stock, stocks);
  if (pdf === null) return refused('not-made', { reason: noSuchStock(stock, Object.keys(stocks)) });
  await progress(1, 1);
  const title = say('paper.calibration', { stock });
  return { ok: true, paper: { pdf, title, ...mediaOf(stock, stocks) }, stickers: '', stock };
}

function noSuchStock(stock: string, stocks: readonly string[]): Saying {
  return { words: 'api.stock-unknown', figures: { stock: stock.slice(0, 40), stocks: stocks.join(', ') } };
}

async function papers(
  source: PlanSource,
  { kind, paper = 'letter', doors }: PrintRequest & { readonly kind: PaperKind },
  progress: Progress,
): Promise<PrintMade | Refused> {
  const plan = planOfPaper(source, kind, doors);
  const made = await papersPdf(plan, { kind, paper, ...(doors === undefined ? {} : { doors }), progress });
  if (made.ok)
    return {
      ok: true,
      paper: { pdf: made.pdf, title: say(`paper.title-${kind}`, { job: plan.job }), media: paper },
      stickers: '',
      stock: paper,
    };
  return refused('not-made', {
    reason:
      made.fault === 'no-arch'
        ? { words: 'paper.no-arch' }
        : { words: 'paper.doors-unknown', figures: { doors: made.doors.slice(0, 10).join(', ') } },
  });
}

async function stickers(
  source: PlanSource,
  stocks: Stocks,
  { stock = DEFAULT_STOCK, symbol, codes: asked, from }: PrintRequest,
  progress: Progress,
): Promise<PrintMade | Refused> {
  const plan = planFrom(source);
  const codes = asked?.map((text) => {
    const read = readPartCode(text);
    return read.kind === 'part' ? read.code : text;
  });
  const made = await stickersPdf(plan, {
    stock,
    stocks,
    progress,
    ...(symbol === undefined ? {} : { symbol }),
    ...(from === undefined ? {} : { from }),
    ...(codes === undefined ? {} : { codes }),
  });
  if (!made.ok)
    return refused('not-made', {
      reason:
        made.fault === 'stock-unknown'
          ? noSuchStock(stock, made.stocks)
          : made.fault === 'codes-unknown'
            ? { words: 'api.codes-unknown', figures: { codes: made.codes.slice(0, 10).join(', ') } }
            : made.told,
    });
  return {
    ok: true,
    paper: {
      pdf: made.pdf,
      title: say('paper.title', { job: plan.job }),
      stickers: made.stickers,
      ...mediaOf(stock, stocks),
    },
    stickers: lines(stickersOf(plan, codes)),
    stock,
  };
}

/** A sticker that was printed, and a sum of the figures that stand on it. */
export interface PrintedSticker {
  readonly code: string;
  readonly says: string;
}

/** The stickers of a live plan with these codes, each once; of all its parts where none are named. */
export function stickersOf({ doors, units }: Plan, codes?: readonly string[]): PrintedSticker[] {
  const wanted = codes === undefined ? null : new Set(codes);
  return doors.flatMap(({ parts }) =>
    parts.flatMap((part) =>
      wanted === null || wanted.has(part.code) ? [{ code: part.code, says: stickerSays(part, units) }] : [],
    ),
  );
}

/** A line for each: one text goes from thread to thread at once, sixty thousand objects do not. */
function lines(stickers: readonly PrintedSticker[]): string {
  return stickers.map(({ code, says }) => `${code} ${says}`).join('\n');
}

/** The stickers of such lines. */
export function readLines(text: string): PrintedSticker[] {
  return text === ''
    ? []
    : text.split('\n').map((line) => {
        const space = line.indexOf(' ');
        return { code: line.slice(0, space), says: line.slice(space + 1) };
      });
}

/** The sheet that a stock is on, by its size; a roll has none. */
function mediaOf(name: string, stocks: Stocks): Pick<Paper, 'media'> {
  const stock = stockNamed(name, stocks);
  if (stock === null) return {};
  const { width, height } = stock.page;
  const same = (paper: 'letter' | 'a4') =>
    Math.abs(PAPERS[paper].width - width) < 1 && Math.abs(PAPERS[paper].height - height) < 1;
  return same('letter') ? { media: 'letter' } : same('a4') ? { media: 'a4' } : {};
}
