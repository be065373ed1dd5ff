import type { JobLine } from '#core/api/jobs-api.ts';
import { indexParts, type PartIndex } from '#core/marks/live-plan.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { own } from '#core/marks/progress.ts';
import type { AsMarked } from '#core/measured/as-marked.ts';
import type { Plan } from '#core/plan/plan.ts';
import type { KeptJob } from './kept-jobs.ts';

/** A job as this screen knows it. The plan carries the codes of the first blanks; replacements are in the progress. */
export interface LiveJob {
  readonly line: JobLine;
  readonly plan: Plan;
  readonly index: PartIndex;
  /** The job file as the office saved it; undefined when the hub did not give it. */
  readonly file: unknown;
  /** Settings that something was marked by and that are others since. */
  readonly asMarked: readonly AsMarked[];
  /** What the hub has said. */
  readonly confirmed: JobProgress;
  /** The same with this screen's own marks that the hub has not confirmed yet. */
  readonly progress: JobProgress;
}

/** Does or did this code stand for a part of this job? */
export function knowsCode(job: LiveJob, code: string): boolean {
  return job.index.parts.has(code) || own(job.progress.parts, code) !== undefined;
}

/** A job out of the copy in the browser's database. */
export function liveAgain({ line, plan, file, asMarked = [], progress }: KeptJob): LiveJob {
  return { line, plan, file, asMarked, index: indexParts(plan), confirmed: progress, progress };
}

/** A job as the copy in the browser's database keeps it. */
export function toKeep({ line, plan, file, asMarked, confirmed }: LiveJob): KeptJob {
  return { line, plan, file, asMarked, progress: confirmed };
}
