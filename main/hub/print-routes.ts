import { paperKind, paperSize, type PrinterLine } from '#core/api/prints-api.ts';
import type { Language } from '#core/words/languages.ts';
import type { PrintDesk } from '../printing/print-desk.ts';
import { tellRefusal } from '../printing/tell-refusal.ts';
import type { Store } from '../store/store.ts';
import type { Announcer } from './events.ts';
import { whenGone } from './gone.ts';
import { jobOf } from './job-routes.ts';
import { planSource, toolsOf } from './plan-source.ts';
import { problem } from './problem.ts';
import { recordPrinted } from './record-printed.ts';
import type { GivenBy, Serve } from './serve.ts';
import { readLines } from '../work/make-print.ts';
import { shopStocks } from '../work/shop-stocks.ts';
import type { WorkDesk } from '../work/work-desk.ts';
import { deviceOf } from './who-asks.ts';

/** The printers here, prints on their way, and a job's papers to look at or to print from the browser. */
export function printRoutes(
  serve: Serve,
  store: Store,
  desk: PrintDesk,
  announcer: Announcer,
  work: WorkDesk,
): void {
  serve('GET /printers', async ({ language }) => {
    const listed = await desk.list();
    if (!listed.ok) return { printers: [], message: tellRefusal(listed, language) };
    const { printers } = listed;
    const stickers = stickerPrinter(store, printers);
    return { printers, ...(stickers === null ? {} : { stickers }) };
  });

  serve('POST /prints', async ({ body, request }) => {
    const id = jobOf(store, body.job).document.id;
    const device = deviceOf(request)?.id ?? null;
    if (device !== null && !desk.mayStart(device)) throw problem(429, 'api.prints-many');
    const print = desk.start(
      {
        printer: body.printer,
        make: (progress, signal) => {
          const stored = jobOf(store, id);
          const none = body.kind === 'calibration';
          return work.make(
            {
              kind: 'print',
              source: none ? null : planSource(store, stored),
              tools: toolsOf(store),
              request: body,
            },
            { doors: none ? 0 : stored.summary.doors, signal },
            { progress },
          );
        },
        printed: ({ stickers, stock }) =>
          recordPrinted(store, announcer, {
            job: id,
            stickers: readLines(stickers),
            stock,
            printer: body.printer,
            ...(body.by === undefined ? {} : { by: body.by }),
          }),
      },
      device,
    );
    return { id: print };
  });

  serve('GET /prints/:id', async ({ params, language }) => stateOf(desk, params.id, language));

  serve('DELETE /prints/:id', async ({ params, language }) => {
    stateOf(desk, params.id, language);
    desk.cancel(params.id);
    return stateOf(desk, params.id, language);
  });

  serve('GET /jobs/:id/papers.pdf', async ({ params, query, reply }) => {
    const stored = jobOf(store, params.id);
    const kind = paperKind.safeParse(query.kind);
    const paper = paperSize.safeParse(query.paper ?? 'letter');
    if (!kind.success) throw problem(400, 'api.body', { reason: { words: 'api.body.kind' } });
    if (!paper.success) throw problem(400, 'api.body', { reason: { words: 'api.body.paper' } });
    const doors = query.doors?.split(',').filter((each) => each !== '');
    const made = await work.make(
      { kind: 'papers', source: planSource(store, stored), of: kind.data, paper: paper.data, doors },
      { doors: stored.summary.doors, signal: whenGone(reply) },
    );
    if (!made.ok)
      throw made.fault === 'no-arch'
        ? problem(404, 'api.no-arch')
        : problem(404, 'api.door-unknown', { door: made.doors.slice(0, 5).join(', ').slice(0, 100) });
    return reply
      .type('application/pdf')
      .header('content-disposition', `inline; filename="${kind.data}.pdf"`)
      .send(Buffer.from(made.pdf.buffer, made.pdf.byteOffset, made.pdf.byteLength));
  });
}

/** Where stickers were printed last, while that printer takes work and the shop has that stock. */
function stickerPrinter(
  store: Store,
  printers: readonly PrinterLine[],
): GivenBy<'GET /printers'>['stickers'] | null {
  const last = store.lastPrint;
  if (last === null) return null;
  const { printer, stock } = last;
  const stocks = shopStocks(store.shop.shop);
  const spec = Object.hasOwn(stocks, stock) ? stocks[stock] : undefined;
  const works = printers.some(
    ({ name, accepting, state }) => name === printer && accepting && state !== 'stopped',
  );
  if (!works || spec === undefined) return null;
  return { printer, stock, positions: spec.kind === 'sheet' ? spec.columns * spec.rows : 1 };
}

function stateOf(desk: PrintDesk, id: string, language: Language) {
  const state = desk.state(id, language);
  if (state === undefined) throw problem(404, 'api.print-unknown');
  return state;
}
