import type { PaperKind, PrintRequest } from '#core/api/prints-api.ts';
import { readPartCode } from '#core/codes/read-code.ts';
import { livePlan } from '#core/marks/live-plan.ts';
import type { Saying } from '#core/plan/figure.ts';
import type { Plan } from '#core/plan/plan.ts';
import type { Stocks } from '#core/stickers/stock.ts';
import { say, spokenNow } from '#core/words/say.ts';
import { calibrationPdf } from '#labels/stickers/calibration-pdf.ts';
import { PAPERS } from '#labels/papers/paper-size.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import { stockNamed } from '#labels/stickers/stock-in-points.ts';
import { stickersPdf } from '#labels/stickers/stickers-pdf.ts';
import type { Progress } from '../printing/print-desk.ts';
import { type Paper, refused, type Refused } from '../printing/printer.ts';
import type { Store } from '../store/store.ts';
import { planDocument } from '../store/documents/plan-document.ts';
import { jobOf } from './job-routes.ts';
import { type PrintedSticker, stickersOf } from './record-printed.ts';
import { shopStocks } from './shop-stocks.ts';

/** The stock that is meant where none is named. */
export const DEFAULT_STOCK = 'letter-3x10';

/** A paper that is made, and which stickers are on it. */
export interface MadePaper {
  readonly ok: true;
  readonly paper: Paper;
  readonly stickers: readonly PrintedSticker[];
  readonly stock: string;
}

/** A job's plan as it lives, with where every setting is measured from, for a paper in the shop's language. */
export function explainedPlan(store: Store, id: string): Plan {
  const { document, plan } = jobOf(store, id);
  const explained = planDocument(document, spokenNow());
  return livePlan(explained.ok ? explained.value : plan, store.progress(id));
}

/** Makes what a print asks for, or says why it cannot be made. */
export async function makePaper(
  store: Store,
  id: string,
  request: PrintRequest,
  progress: Progress,
): Promise<MadePaper | Refused> {
  await progress(0, 0);
  switch (request.kind) {
    case 'stickers':
      return stickers(store, id, request, progress);
    case 'calibration':
      return calibration(shopStocks(store.shop.shop), request.stock, progress);
    default:
      return papers(store, id, { ...request, kind: request.kind }, progress);
  }
}

/** The page to hold against a stock; it carries no stickers, so that nothing is kept as printed. */
async function calibration(
  stocks: Stocks,
  stock = DEFAULT_STOCK,
  progress: Progress,
): Promise<MadePaper | Refused> {
  const pdf = await calibrationPdf(stock, stocks);
  if (pdf === null) return refused('not-made', { reason: noSuchStock(stock, Object.keys(stocks)) });
  await progress(1, 1);
  const title = say('paper.calibration', { stock });
  return { ok: true, paper: { pdf, title, ...mediaOf(stock, stocks) }, stickers: [], stock };
}

function noSuchStock(stock: string, stocks: readonly string[]): Saying {
  return { words: 'api.stock-unknown', figures: { stock: stock.slice(0, 40), stocks: stocks.join(', ') } };
}

async function papers(
  store: Store,
  id: string,
  { kind, paper = 'letter', doors }: PrintRequest & { readonly kind: PaperKind },
  progress: Progress,
): Promise<MadePaper | Refused> {
  const plan = explainedPlan(store, id);
  const made = await papersPdf(plan, { kind, paper, ...(doors === undefined ? {} : { doors }), progress });
  if (made.ok)
    return {
      ok: true,
      paper: { pdf: made.pdf, title: say(`paper.title-${kind}`, { job: plan.job }), media: paper },
      stickers: [],
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
  store: Store,
  id: string,
  { stock = DEFAULT_STOCK, symbol, codes: asked, from }: PrintRequest,
  progress: Progress,
): Promise<MadePaper | Refused> {
  const plan = livePlan(jobOf(store, id).plan, store.progress(id));
  const stocks = shopStocks(store.shop.shop);
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
    stickers: stickersOf(plan, codes),
    stock,
  };
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
