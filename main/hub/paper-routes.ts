import type { FastifyReply } from 'fastify';
import { readPartCode } from '#core/codes/read-code.ts';
import { Stretch } from '../store/files/stretch.ts';
import type { Store } from '../store/store.ts';
import type { Announcer } from './events.ts';
import { jobOf } from './job-routes.ts';
import { whenGone } from './gone.ts';
import { planSource, toolsOf } from './plan-source.ts';
import { DEFAULT_STOCK } from '../work/make-print.ts';
import type { StickersMade } from '../work/tasks.ts';
import type { WorkDesk } from '../work/work-desk.ts';
import { problem } from './problem.ts';
import { recordPrinted } from './record-printed.ts';
import type { Serve } from './serve.ts';
import { countToPrint, stickersNamed } from './stickers-due.ts';
import { jsonInPieces, tableText } from './json-pieces.ts';

/** A job's stickers, and when each was printed. */
export function paperRoutes(serve: Serve, store: Store, announcer: Announcer, work: WorkDesk): void {
  serve('GET /jobs/:id/stickers.pdf', async ({ params, query, reply }) => {
    const stored = jobOf(store, params.id);
    const { stock = DEFAULT_STOCK, codes, from = '1', symbol } = query;
    if (!/^[1-9]\d{0,3}$/.test(from)) throw problem(400, 'api.body', { reason: { words: 'api.body.from' } });
    if (symbol !== undefined && symbol !== 'code128' && symbol !== 'datamatrix')
      throw problem(400, 'api.body', { reason: { words: 'api.body.symbol' } });
    const asked =
      codes === undefined
        ? undefined
        : codes
            .split(',')
            .filter((each) => each !== '')
            .map((each) => readPartCode(each));
    const wrong = asked?.find((each) => each.kind !== 'part');
    if (wrong !== undefined) throw problem(400, 'api.codes-unknown', { codes: (codes ?? '').slice(0, 60) });
    const made = await work.make(
      {
        kind: 'stickers',
        source: planSource(store, stored),
        tools: toolsOf(store),
        stock,
        from: Number(from),
        symbol,
        codes: asked?.flatMap((each) => (each.kind === 'part' ? [each.code] : [])),
      },
      { doors: stored.summary.doors, signal: whenGone(reply) },
    );
    if (!made.ok && made.fault === 'stock-unknown')
      throw problem(400, 'api.stock-unknown', {
        stock: stock.slice(0, 40),
        stocks: made.stocks.join(', '),
      });
    if (!made.ok && made.fault === 'codes-unknown')
      throw problem(404, 'api.codes-unknown', { codes: made.codes.join(', ') });
    if (!made.ok) throw problem(400, 'api.body', { reason: made.told });
    return reply
      .type('application/pdf')
      .header('content-disposition', 'inline; filename="stickers.pdf"')
      .header('x-stickers', stickerHeader(made))
      .send(Buffer.from(made.pdf.buffer, made.pdf.byteOffset, made.pdf.byteLength));
  });
  serve('GET /stickers', async () => {
    const jobs: { id: string; toPrint: number }[] = [];
    for (const stored of store.jobs.all()) {
      if ((await store.left(stored)) === 0) continue;
      jobs.push({ id: stored.document.id, toPrint: await countToPrint(store, stored) });
    }
    return { jobs };
  });

  const printedAnswer = async (id: string, reply: FastifyReply) =>
    jsonInPieces(reply, ['{"codes":{', ...(await tableText(store.printed(id))), '}}']);

  serve('GET /jobs/:id/printed', async ({ params, reply }) =>
    printedAnswer(jobOf(store, params.id).document.id, reply),
  );

  serve('POST /jobs/:id/printed', async ({ params, body, reply }) => {
    const stored = jobOf(store, params.id);
    const { id } = stored.document;
    const named: string[] = [];
    const stretch = new Stretch();
    for (const text of body.codes) {
      const read = stored.index.find(text) === null ? readPartCode(text) : null;
      named.push(read?.kind === 'part' ? read.code : text);
      await stretch.giveWay();
    }
    const stickers = await stickersNamed(store, stored, new Set(named));
    const live = new Set(stickers.map(({ code }) => code));
    const unknown = named.filter((code) => !live.has(code));
    if (unknown.length > 0)
      throw problem(404, 'api.codes-unknown', { codes: unknown.slice(0, 5).join(', ').slice(0, 100) });
    const { stock, by } = body;
    await recordPrinted(store, announcer, {
      job: id,
      stickers,
      stock,
      ...(by === undefined ? {} : { by }),
    });
    return printedAnswer(id, reply);
  });
}

/** What a printed sheet does not say: how many stickers, which parts have two, and for which the stock is too large. */
function stickerHeader({ counts, doubled, tooLarge }: Extract<StickersMade, { ok: true }>): string {
  return JSON.stringify({ ...counts, doubled, tooLarge });
}
