import type { StationId } from '#core/stages/stations.ts';
import type { Located } from '#core/marks/live-plan.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { own } from '#core/marks/progress.ts';
import { doneOf, doorDone, type Missing, missingBefore, nextStage } from '#core/marks/stage-state.ts';
import type { PlanStage } from '#core/plan/plan.ts';

/** What a scanned part means at a station: its setup, or why there is none, and where it goes. */
export type Here =
  | { readonly kind: 'setup'; readonly stage: PlanStage }
  | { readonly kind: 'stage-not-reached'; readonly missing: readonly Missing[]; readonly next: PlanStage }
  | { readonly kind: 'already-done'; readonly next: PlanStage }
  | { readonly kind: 'wrong-station'; readonly next: PlanStage }
  | { readonly kind: 'finished' }
  | { readonly kind: 'spoiled'; readonly replacedBy: string };

/** Reads a part's progress as somebody at this station asks it. */
export function hereAt(
  station: StationId,
  code: string,
  { door, part }: Located,
  progress: JobProgress,
): Here {
  const spoiled = own(progress.parts, code);
  if (spoiled?.spoiled !== undefined) return { kind: 'spoiled', replacedBy: spoiled.replacedBy ?? part.code };
  const next = nextStage(part, door, progress);
  if (next === null) return { kind: 'finished' };
  if (next.station === station) {
    const missing = missingBefore(next, part, door, progress);
    return missing.length === 0
      ? { kind: 'setup', stage: next }
      : { kind: 'stage-not-reached', missing, next };
  }
  const mine = [...part.stages, ...door.stages].filter((stage) => stage.station === station);
  const done = { ...doneOf(progress, part.code), ...doorDone(progress, door.door) };
  const open = mine.filter(({ stage }) => !Object.hasOwn(done, stage));
  if (mine.length === 0) return { kind: 'wrong-station', next };
  if (open.length === 0) return { kind: 'already-done', next };
  return { kind: 'stage-not-reached', missing: [{ stage: next.stage }], next };
}
