import type { Plan } from '../plan/plan.ts';
import type { JobProgress } from './mark.ts';
import { isFinished, recordedOf } from './stage-state.ts';

/** A stage of a part that was done and is no longer one of its stages, though the part is still there. */
export interface CutOtherWay {
  readonly door: string;
  readonly part: string;
  readonly stage: string;
}

/**
 * What is cut in a way that the plan of now does not have: asked about before the ways of a job are changed. Both are live
 * plans of one job; a finished door is left out, nothing of it is cut any more.
 */
export function cutOtherWay(before: Plan, now: Plan, progress: JobProgress): CutOtherWay[] {
  const later = new Map(
    now.doors.flatMap(({ parts }) =>
      parts.map(({ code, stages }) => [code, new Set(stages.map(({ stage }) => stage))] as const),
    ),
  );
  return before.doors.flatMap(({ door, parts }) => {
    if (isFinished(progress, door)) return [];
    return parts.flatMap(({ code, part, stages }): CutOtherWay[] => {
      const left = later.get(code);
      const done = recordedOf(progress, code);
      if (left === undefined) return [];
      return stages.flatMap(({ stage }) =>
        Object.hasOwn(done, stage) && !left.has(stage) ? [{ door, part, stage }] : [],
      );
    });
  });
}
