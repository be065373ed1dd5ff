import { BUILT_IN_STOCKS } from '#core/stickers/stock.ts';
import { stockWords } from '#core/stickers/stock-words.ts';
import { calibrationPdf } from '#labels/stickers/calibration-pdf.ts';
import type { Store } from '../store/store.ts';
import { problem } from './problem.ts';
import type { Serve } from './serve.ts';
import { shopStocks } from '../work/shop-stocks.ts';

/** The stocks of stickers that the shop has, and the page to hold against one. */
export function stockRoutes(serve: Serve, store: Store): void {
  serve('GET /stocks', async ({ language }) => ({
    stocks: Object.entries(shopStocks(store.shop.shop)).map(([name, spec]) => ({
      name,
      kind: spec.kind,
      sizes: stockWords(spec, language),
      positions: spec.kind === 'sheet' ? spec.columns * spec.rows : 1,
      own: !Object.hasOwn(BUILT_IN_STOCKS, name),
    })),
  }));

  serve('GET /stocks/:stock/calibration.pdf', async ({ params, reply }) => {
    const { stock } = params;
    const stocks = shopStocks(store.shop.shop);
    const pdf = await calibrationPdf(stock, stocks);
    if (pdf === null)
      throw problem(404, 'api.stock-unknown', {
        stock: stock.slice(0, 40),
        stocks: Object.keys(stocks).join(', '),
      });
    return reply
      .type('application/pdf')
      .header('content-disposition', 'inline; filename="calibration.pdf"')
      .send(Buffer.from(pdf));
  });
}
