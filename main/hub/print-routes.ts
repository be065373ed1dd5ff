import { paperKind, paperSize } from '#core/api/prints-api.ts';
import { papersPdf } from '#labels/papers/papers-pdf.ts';
import type { PrintDesk } from '../printing/print-desk.ts';
import { tellRefusal } from '../printing/tell-refusal.ts';
import type { Store } from '../store/store.ts';
import { giveWay } from './give-way.ts';
import { jobOf } from './job-routes.ts';
import { explainedPlan, makePaper } from './make-paper.ts';
import { problem } from './problem.ts';
import { recordPrinted } from './record-printed.ts';
import type { Serve } from './serve.ts';

/** The printers here, prints on their way, and a job's papers to look at or to print from the browser. */
export function printRoutes(serve: Serve, store: Store, desk: PrintDesk): void {
  serve('GET /printers', async () => {
    const listed = await desk.list();
    return listed.ok ? { printers: listed.printers } : { printers: [], message: tellRefusal(listed) };
  });

  serve('POST /prints', async ({ body }) => {
    const id = jobOf(store, body.job).document.id;
    return {
      id: desk.start({
        printer: body.printer,
        make: (progress) => makePaper(store, id, body, progress),
        printed: ({ codes, stock }) =>
          recordPrinted(store, {
            job: id,
            codes,
            stock,
            printer: body.printer,
            ...(body.by === undefined ? {} : { by: body.by }),
          }),
      }),
    };
  });

  serve('GET /prints/:id', async ({ params }) => stateOf(desk, params.id));

  serve('DELETE /prints/:id', async ({ params }) => {
    stateOf(desk, params.id);
    desk.cancel(params.id ?? '');
    return stateOf(desk, params.id);
  });

  serve('GET /jobs/:id/papers.pdf', async ({ params, query, reply }) => {
    const stored = jobOf(store, params.id);
    const kind = paperKind.safeParse(query.kind);
    const paper = paperSize.safeParse(query.paper ?? 'letter');
    if (!kind.success) throw problem(400, 'api.body', { reason: 'kind: cards, templates, rods or sheet' });
    if (!paper.success) throw problem(400, 'api.body', { reason: 'paper: letter or a4' });
    const doors = query.doors?.split(',').filter((each) => each !== '');
    const made = await papersPdf(explainedPlan(store, stored.document.id), {
      kind: kind.data,
      paper: paper.data,
      ...(doors === undefined ? {} : { doors }),
      progress: giveWay,
    });
    if (!made.ok)
      throw made.fault === 'no-arch'
        ? problem(404, 'api.no-arch')
        : problem(404, 'api.door-unknown', { door: made.doors.slice(0, 5).join(', ').slice(0, 100) });
    return reply
      .type('application/pdf')
      .header('content-disposition', `inline; filename="${kind.data}.pdf"`)
      .send(Buffer.from(made.pdf));
  });
}

function stateOf(desk: PrintDesk, id: string | undefined) {
  const state = desk.state(id ?? '');
  if (state === undefined) throw problem(404, 'api.print-unknown');
  return state;
}
