import type { FastifyInstance } from 'fastify';
import { readPartCode } from '#core/codes/read-code.ts';
import { livePlan } from '#core/marks/live-plan.ts';
import { stickersPdf } from '#labels/stickers-pdf.ts';
import { STOCKS } from '#labels/stock.ts';
import type { Store } from '../store/store.ts';
import { jobOf } from './job-routes.ts';
import { Problem } from './problem.ts';

type Stickers = {
  Params: { id: string };
  Querystring: { stock?: string; codes?: string; from?: string; symbol?: string };
};

/** GET /jobs/:id/stickers.pdf */
export function paperRoutes(app: FastifyInstance, store: Store): void {
  app.get<Stickers>('/jobs/:id/stickers.pdf', async (request, reply) => {
    const stored = jobOf(store, request.params.id);
    const plan = livePlan(stored.plan, store.progress(stored.document.id));
    const { stock = 'letter-3x10', codes, from = '1', symbol } = request.query;
    if (!/^[1-9]\d{0,3}$/.test(from))
      throw new Problem(400, 'api.body', { reason: 'from: a position from 1' });
    if (symbol !== undefined && symbol !== 'code128' && symbol !== 'datamatrix')
      throw new Problem(400, 'api.body', { reason: 'symbol: code128 or datamatrix' });
    const asked =
      codes === undefined
        ? undefined
        : codes
            .split(',')
            .filter((each) => each !== '')
            .map((each) => readPartCode(each));
    const wrong = asked?.find((each) => each.kind !== 'part');
    if (wrong !== undefined)
      throw new Problem(400, 'api.codes-unknown', { codes: (codes ?? '').slice(0, 60) });
    const made = await stickersPdf(plan, {
      stock,
      from: Number(from),
      ...(symbol === undefined ? {} : { symbol }),
      ...(asked === undefined
        ? {}
        : { codes: asked.flatMap((each) => (each.kind === 'part' ? [each.code] : [])) }),
    });
    if (!made.ok && made.fault === 'stock-unknown')
      throw new Problem(400, 'api.stock-unknown', {
        stock: stock.slice(0, 40),
        stocks: Object.keys(STOCKS).join(', '),
      });
    if (!made.ok && made.fault === 'codes-unknown')
      throw new Problem(404, 'api.codes-unknown', { codes: made.codes.join(', ') });
    if (!made.ok) throw new Problem(400, 'api.body', { reason: made.message });
    return reply
      .type('application/pdf')
      .header('content-disposition', 'inline; filename="stickers.pdf"')
      .send(Buffer.from(made.pdf));
  });
}
