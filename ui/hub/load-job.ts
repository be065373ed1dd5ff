import type { JobLine } from '#core/api/jobs-api.ts';
import { indexParts } from '#core/marks/live-plan.ts';
import { ask } from './client.ts';
import type { LiveJob } from './live-job.ts';
import { planByDoor } from './plan-by-door.ts';

/** What of a known job still holds: its plan and file, and what has happened to it. */
export interface Holds {
  readonly plan: boolean;
  readonly progress: boolean;
}

/** What came of a job: null where its plan, or what has happened to it, was never told; `whole` where all came that was asked for, `fresh` where what has happened did. */
export interface LoadedJob {
  readonly job: LiveJob | null;
  readonly whole: boolean;
  readonly fresh: boolean;
}

/** Asks for what does not hold of a job. One of which nobody knows what was done already is not shown: it would be shown as if nothing was. */
export async function loadJob(line: JobLine, known: LiveJob | undefined, holds: Holds): Promise<LoadedJob> {
  const params = { id: line.id };
  const same = holds.plan ? known : undefined;
  const kept = holds.progress ? known?.confirmed : undefined;
  const [planned, saved, progress] = await Promise.all([
    same === undefined ? planByDoor(line.id, line.doors, known?.plan ?? null) : same.plan,
    same === undefined ? ask('GET /jobs/:id/file', { params }) : null,
    kept ?? progressOf(line.id),
  ]);
  const whole = planned !== null && (saved === null || saved.kind === 'ok') && progress !== null;
  const fresh = kept === undefined && progress !== null;
  const confirmed = progress ?? known?.confirmed;
  if (planned === null || confirmed === undefined) return { job: null, whole, fresh };
  const given = saved?.kind === 'ok' ? saved.value : { file: undefined, asMarked: undefined };
  const { index, file, asMarked } = same ?? {
    index: indexParts(planned),
    file: given.file,
    asMarked: given.asMarked ?? [],
  };
  return {
    job: { line, plan: planned, file, asMarked, index, confirmed, progress: confirmed },
    whole,
    fresh,
  };
}

async function progressOf(id: string) {
  const answer = await ask('GET /jobs/:id/progress', { params: { id } });
  return answer.kind === 'ok' ? answer.value : null;
}
