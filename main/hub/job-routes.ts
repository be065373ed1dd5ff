import type { FastifyInstance, FastifyReply } from 'fastify';
import { jobUpdate, type JobLine } from '#core/api/jobs-api.ts';
import { livePlan } from '#core/marks/live-plan.ts';
import type { Plan } from '#core/plan/plan.ts';
import { explainedPlan, type StoredJob } from '../store/job-document.ts';
import type { Saved } from '../store/job-store.ts';
import type { Store } from '../store/store.ts';
import { checked } from './checked.ts';
import type { Announce } from './events.ts';
import { Problem } from './problem.ts';

type ById = { Params: { id: string }; Querystring: { why?: string } };

/** Everything under /jobs but its papers. */
export function jobRoutes(app: FastifyInstance, store: Store, announce: Announce): void {
  app.get('/jobs', async () => ({ jobs: store.jobs.all().map(lineOf) }));

  app.post('/jobs', async (request, reply) => {
    const saved = await store.jobs.add(request.body, (id) => store.seen(id));
    if (saved.kind === 'saved')
      announce({ event: 'job', data: { id: saved.stored.document.id, change: 'added' } });
    return answerSaved(reply, saved, 201, 'new');
  });

  app.get<ById>('/jobs/:id', async (request) => {
    const stored = jobOf(store, request.params.id);
    const plan = request.query.why === '1' ? (explainedPlan(stored.document) ?? stored.plan) : stored.plan;
    return livePlan(plan, store.progress(stored.document.id)) satisfies Plan;
  });

  app.get<ById>('/jobs/:id/file', async (request) => {
    const { document } = jobOf(store, request.params.id);
    return { id: document.id, revision: document.revision, file: document.file };
  });

  app.get<ById>('/jobs/:id/progress', async (request) =>
    store.progress(jobOf(store, request.params.id).document.id),
  );

  app.put<ById>('/jobs/:id', async (request, reply) => {
    const { revision, file } = checked(jobUpdate, request.body);
    const saved = await store.jobs.update(request.params.id, revision, file);
    if (saved.kind === 'saved')
      announce({ event: 'job', data: { id: request.params.id, change: 'changed' } });
    return answerSaved(reply, saved, 200, request.params.id);
  });

  app.delete<ById>('/jobs/:id', async (request, reply) => {
    if (!(await store.jobs.remove(request.params.id))) throw unknownJob(request.params.id);
    announce({ event: 'job', data: { id: request.params.id, change: 'removed' } });
    return reply.code(204).send();
  });
}

/** The job of this id, or 404. */
export function jobOf(store: Store, id: string): StoredJob {
  const stored = store.jobs.get(id);
  if (stored === undefined) throw unknownJob(id);
  return stored;
}

function unknownJob(id: string): Problem {
  return new Problem(404, 'api.job-unknown', { id: id.slice(0, 70) });
}

function answerSaved(reply: FastifyReply, saved: Saved, status: number, id: string): FastifyReply {
  switch (saved.kind) {
    case 'saved': {
      const { document, plan } = saved.stored;
      const parts = plan.doors.flatMap(({ door, parts }) =>
        parts.map(({ code, part }) => ({ code, door, part })),
      );
      return reply.code(status).send({
        id: document.id,
        job: plan.job,
        revision: document.revision,
        codesChanged: saved.codesChanged,
        parts,
      });
    }
    case 'faults':
      return reply
        .code(400)
        .send({ errors: saved.faults.map(({ path, code, message }) => ({ path, code, message })) });
    case 'stale':
      throw new Problem(409, 'api.stale', { revision: saved.revision }, { revision: saved.revision });
    case 'unknown':
      throw unknownJob(id);
  }
}

function lineOf({ document, due, plan }: StoredJob): JobLine {
  return {
    id: document.id,
    job: plan.job,
    ...(due === undefined ? {} : { due }),
    units: plan.units,
    doors: plan.doors.length,
    parts: plan.doors.reduce((sum, { parts }) => sum + parts.length, 0),
    revision: document.revision,
  };
}
