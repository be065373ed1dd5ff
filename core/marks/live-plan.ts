import type { Plan } from '../plan/plan.ts';
import type { JobProgress } from './mark.ts';
import { own } from './progress.ts';

/** The code of the blank that stands for a part now: the last replacement, or the part's first blank. */
export function liveCode(progress: JobProgress, code: string): string {
  let live = code;
  for (
    let next = own(progress.parts, live)?.replacedBy;
    next !== undefined;
    next = own(progress.parts, live)?.replacedBy
  )
    live = next;
  return live;
}

/** A plan whose spoiled parts carry the codes of their replacements. */
export function livePlan(plan: Plan, progress: JobProgress): Plan {
  if (!Object.values(progress.parts).some(({ replacedBy }) => replacedBy !== undefined)) return plan;
  return {
    ...plan,
    doors: plan.doors.map((door) => ({
      ...door,
      parts: door.parts.map((part) => ({ ...part, code: liveCode(progress, part.code) })),
    })),
  };
}
