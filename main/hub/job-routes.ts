import type { JobLine } from '#core/api/jobs-api.ts';
import { disagreements } from '#core/measured/disagreements.ts';
import { livePlan } from '#core/marks/live-plan.ts';
import type { Saved } from '../store/job-store.ts';
import type { Store } from '../store/store.ts';
import { planDocument, type StoredJob } from '../store/stored-job.ts';
import type { Announcer } from './events.ts';
import { faulty, problem, type Problem } from './problem.ts';
import type { GivenBy, Serve } from './serve.ts';

/** Everything under /jobs but its papers. */
export function jobRoutes(serve: Serve, store: Store, announcer: Announcer): void {
  const tell = (id: string, change: 'added' | 'changed' | 'removed') =>
    announcer.tell({ event: 'job', data: { id, change } });

  serve('GET /jobs', async () => ({
    jobs: store.jobs.all().map((stored) => lineOf(stored, store.left(stored))),
  }));

  serve('POST /jobs', async ({ body }) => {
    const saved = await store.change(() => store.jobs.add(body, (id) => store.seen(id)));
    if (saved.kind === 'saved') tell(saved.stored.document.id, 'added');
    return savedAnswer(saved, 'new');
  });

  serve('GET /jobs/:id', async ({ params, query }) => {
    const stored = jobOf(store, params.id);
    const explained = query.why === '1' ? planDocument(stored.document, true) : null;
    return livePlan(
      explained?.ok === true ? explained.value : stored.plan,
      store.progress(stored.document.id),
    );
  });

  serve('GET /jobs/:id/file', async ({ params }) => {
    const { id, revision, file, measured } = jobOf(store, params.id).document;
    return { id, revision, file, measured };
  });

  serve('GET /jobs/:id/progress', async ({ params }) => store.progress(jobOf(store, params.id).document.id));

  serve('PUT /jobs/:id', async ({ params, body }) => {
    const { id } = jobOf(store, params.id).document;
    const saved = await store.change(() => store.jobs.update(id, body.revision, body.file));
    if (saved.kind === 'saved') tell(id, 'changed');
    return savedAnswer(saved, id);
  });

  serve('PUT /jobs/:id/measured', async ({ params, body }) => {
    const { id } = jobOf(store, params.id).document;
    const measuring = await store.change(() => store.jobs.measure(id, body.revision, body.measured));
    if (measuring.kind !== 'measured') throw unsaved(measuring, id);
    const { before, stored } = measuring;
    const progress = store.progress(id);
    tell(id, 'changed');
    return {
      revision: stored.document.revision,
      disagree: disagreements(livePlan(before.plan, progress), livePlan(stored.plan, progress), progress),
    };
  });

  serve('DELETE /jobs/:id', async ({ params }) => {
    const { id } = jobOf(store, params.id).document;
    if (!(await store.change(() => store.jobs.remove(id)))) throw unknownJob(id);
    tell(id, 'removed');
    return null;
  });
}

/** The job of this id, or 404. */
export function jobOf(store: Store, id = ''): StoredJob {
  const stored = store.jobs.get(id);
  if (stored === undefined) throw unknownJob(id);
  return stored;
}

function unknownJob(id: string): Problem {
  return problem(404, 'api.job-unknown', { id: id.slice(0, 70) });
}

function unsaved(saved: Exclude<Saved, { kind: 'saved' }>, id: string): Problem {
  switch (saved.kind) {
    case 'faults':
      return faulty(saved.faults);
    case 'stale':
      return problem(409, 'api.stale', { revision: saved.revision }, { revision: saved.revision });
    case 'unknown':
      return unknownJob(id);
  }
}

function savedAnswer(saved: Saved, id: string): GivenBy<'POST /jobs'> {
  if (saved.kind !== 'saved') throw unsaved(saved, id);
  const { document, plan } = saved.stored;
  return {
    id: document.id,
    job: plan.job,
    revision: document.revision,
    codesChanged: saved.codesChanged,
    parts: plan.doors.flatMap(({ door, parts }) => parts.map(({ code, part }) => ({ code, door, part }))),
  };
}

function lineOf({ document, summary }: StoredJob, left: number): JobLine {
  const { id, job, due, units, doors, parts } = summary;
  return {
    id,
    job,
    ...(due === undefined ? {} : { due }),
    units,
    doors,
    parts,
    left,
    revision: document.revision,
    hash: summary.hash,
  };
}
