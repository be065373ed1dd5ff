import type { BinLine } from '#core/api/bin-api.ts';
import { atStake } from '#core/marks/at-stake.ts';
import type { StoredJob } from '../store/documents/stored-job.ts';
import type { Store } from '../store/store.ts';
import type { Announcer } from './events.ts';
import { problem, type Problem } from './problem.ts';
import type { Serve } from './serve.ts';

/** The bin: jobs that were put there, whole, until somebody takes them out again or away for good. */
export function binRoutes(serve: Serve, store: Store, announcer: Announcer): void {
  serve('GET /bin', async () => ({ jobs: store.jobs.bin().map((stored) => lineOf(stored, store)) }));

  serve('POST /bin/:id/restore', async ({ params }) => {
    const stored = store.jobs.getBinned(params.id);
    if (stored === undefined || !(await store.restoreJob(params.id))) throw notThere(params.id);
    const { id, revision } = stored.document;
    announcer.tell({ event: 'job', data: { id, change: 'added' } });
    return { id, job: stored.summary.job, revision };
  });

  serve('DELETE /bin/:id', async ({ params }) => {
    if (store.jobs.getBinned(params.id) === undefined || !(await store.removeJob(params.id)))
      throw notThere(params.id);
    announcer.tell({ event: 'job', data: { id: params.id, change: 'removed' } });
    return null;
  });
}

function notThere(id: string): Problem {
  return problem(404, 'api.bin-unknown', { id: id.slice(0, 70) });
}

function lineOf({ document, summary }: StoredJob, store: Store): BinLine {
  const { id, job, due, doors, parts } = summary;
  return {
    id,
    job,
    ...(due === undefined ? {} : { due }),
    doors,
    parts,
    binned: document.binned ?? '',
    ...atStake(store.progress(id)),
    printed: Object.keys(store.printed(id)).length,
  };
}
