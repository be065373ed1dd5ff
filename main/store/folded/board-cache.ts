import { type BoardDoor, boardDoor } from '#core/marks/board.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import type { JobIndex } from '../documents/job-index.ts';
import type { StoredJob } from '../documents/stored-job.ts';

/** The lines of a plan's doors, each with the progress it was made from: both are replaced, never changed. */
const lines = new WeakMap<JobIndex, { readonly seq: number; readonly line: BoardDoor }[]>();

/** How far every door has come; only doors that have had a mark since the last time are reckoned anew. */
export function* boardOf(
  jobs: readonly StoredJob[],
  progressOf: (job: string, door: string) => JobProgress,
): Generator<BoardDoor> {
  for (const job of jobs) yield* linesOf(job, progressOf);
}

function* linesOf(
  { summary: { id }, index }: StoredJob,
  progressOf: (job: string, door: string) => JobProgress,
): Generator<BoardDoor> {
  const known = lines.get(index) ?? [];
  lines.set(index, known);
  for (let at = 0; at < index.head.doors; at += 1) {
    const progress = progressOf(id, index.doorName(at));
    const before = known[at];
    if (before?.seq === progress.seq) yield before.line;
    else {
      const line = boardDoor(id, index.liveDoor(at, progress), progress);
      known[at] = { seq: progress.seq, line };
      yield line;
    }
  }
}
