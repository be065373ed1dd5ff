import type { JobLine } from '#core/api/jobs-api.ts';
import { indexParts } from '#core/marks/live-plan.ts';
import { emptyProgress } from '#core/marks/progress.ts';
import { ask } from './client.ts';
import type { LiveJob } from './live-job.ts';
import { planByDoor } from './plan-by-door.ts';

/** What of a known job still holds: its plan and file, and what has happened to it. */
export interface Holds {
  readonly plan: boolean;
  readonly progress: boolean;
}

/** Asks for what does not hold of a job. Null where there is no plan of it; `whole` where all came. */
export async function loadJob(
  line: JobLine,
  known: LiveJob | undefined,
  holds: Holds,
): Promise<{ readonly job: LiveJob | null; readonly whole: boolean }> {
  const params = { id: line.id };
  const same = holds.plan ? known : undefined;
  const [planned, saved, progress] = await Promise.all([
    same === undefined ? planByDoor(line.id, line.doors, known?.plan ?? null) : same.plan,
    same === undefined ? ask('GET /jobs/:id/file', { params }) : null,
    holds.progress && known !== undefined ? known.confirmed : progressOf(line.id),
  ]);
  const whole = planned !== null && (saved === null || saved.kind === 'ok') && progress !== null;
  if (planned === null) return { job: null, whole };
  const confirmed = progress ?? known?.confirmed ?? emptyProgress(line.id);
  const given = saved?.kind === 'ok' ? saved.value : { file: undefined, asMarked: undefined };
  const { index, file, asMarked } = same ?? {
    index: indexParts(planned),
    file: given.file,
    asMarked: given.asMarked ?? [],
  };
  return { job: { line, plan: planned, file, asMarked, index, confirmed, progress: confirmed }, whole };
}

async function progressOf(id: string) {
  const answer = await ask('GET /jobs/:id/progress', { params: { id } });
  return answer.kind === 'ok' ? answer.value : null;
}
