import { type BoardDoor, boardDoor } from '#core/marks/board.ts';
import { liveDoor } from '#core/marks/live-plan.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import type { PlanDoor } from '#core/plan/plan.ts';
import type { StoredJob } from '../documents/stored-job.ts';

export type Board = readonly BoardDoor[];

/** A door's line, and the progress it was made from: both are replaced, never changed. */
const lines = new WeakMap<PlanDoor, { readonly seq: number; readonly line: BoardDoor }>();

/** How far every door has come; only doors that have had a mark since the last time are reckoned anew. */
export function boardOf(
  jobs: readonly StoredJob[],
  progressOf: (job: string, door: string) => JobProgress,
): Board {
  return jobs.flatMap(({ plan }) =>
    plan.doors.map((door) => {
      const progress = progressOf(plan.id, door.door);
      const known = lines.get(door);
      if (known?.seq === progress.seq) return known.line;
      const line = boardDoor(plan.id, liveDoor(door, progress), progress);
      lines.set(door, { seq: progress.seq, line });
      return line;
    }),
  );
}
