import type { BinLine } from '#core/api/bin-api.ts';
import { type AtStake, atStake } from '#core/marks/at-stake.ts';
import type { StoredJob } from '../store/documents/stored-job.ts';
import { Stretch } from '../store/files/stretch.ts';
import type { Store } from '../store/store.ts';
import type { Announcer } from './events.ts';
import { problem, type Problem } from './problem.ts';
import type { Serve } from './serve.ts';

/** The bin: jobs that were put there, whole, until somebody takes them out again or away for good. */
export function binRoutes(serve: Serve, store: Store, announcer: Announcer): void {
  serve('GET /bin', async () => {
    const jobs: BinLine[] = [];
    for (const stored of store.jobs.bin()) jobs.push(await lineOf(stored, store));
    return { jobs };
  });

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

async function lineOf({ document, summary }: StoredJob, store: Store): Promise<BinLine> {
  const { id, job, due, doors, parts } = summary;
  return {
    id,
    job,
    ...(due === undefined ? {} : { due }),
    doors,
    parts,
    binned: document.binned ?? '',
    ...(await allAtStake(id, store)),
    printed: store.printed(id).size,
  };
}

/** What was done in a job so far, counted door by door; others get their turn in between. */
async function allAtStake(id: string, store: Store): Promise<AtStake> {
  let [marks, begun, finished] = [0, 0, 0];
  const stretch = new Stretch();
  for (const [, progress] of store.marked(id)) {
    const more = atStake(progress);
    marks += more.marks;
    begun += more.begun;
    finished += more.finished;
    await stretch.giveWay();
  }
  return { marks, begun, finished };
}
