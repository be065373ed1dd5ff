import type { Located } from '#core/marks/live-plan.ts';
import { doorDone, missingBefore } from '#core/marks/stage-state.ts';
import type { PlanDoor, PlanStage } from '#core/plan/plan.ts';
import { type StageId, stageIs } from '#core/stages/stage-id.ts';
import type { LiveJob } from '../hub/live.svelte.ts';

/** A door whose parts are being brought together at assembly: those that were scanned so far. */
export interface Gathered {
  readonly job: string;
  readonly door: PlanDoor;
  /** The stage that they are gathered for. */
  readonly stage: StageId;
  readonly codes: ReadonlySet<string>;
  /** The code scanned last. */
  readonly last: string;
}

export type Brought =
  | { readonly kind: 'nothing-to-gather' }
  | { readonly kind: 'other-door'; readonly here: string }
  /** `full` once every part is there: the stage that is done then. */
  | { readonly kind: 'gathered'; readonly gathered: Gathered; readonly full: PlanStage | null };

/** Brings a part to the door that is put together. There is nothing to gather when the door is past it, or the part not ready. */
export function bring(before: Gathered | null, code: string, job: LiveJob, { door, part }: Located): Brought {
  const whole = doorDone(job.progress, door.door);
  const next = door.stages.find(({ stage }) => !Object.hasOwn(whole, stage));
  if (next === undefined || !stageIs(next.stage, 'gathers') || part.code !== code)
    return { kind: 'nothing-to-gather' };
  const own = missingBefore(next, part, door, job.progress).filter((each) => each.part === part.part);
  if (own.length > 0) return { kind: 'nothing-to-gather' };
  if (before !== null && (before.door.door !== door.door || before.job !== job.line.id))
    return { kind: 'other-door', here: before.door.door };
  const live = new Set(door.parts.map((each) => each.code));
  const codes = new Set([...(before?.codes ?? []), code].filter((each) => live.has(each)));
  const gathered = { job: job.line.id, door, stage: next.stage, codes, last: code };
  return { kind: 'gathered', gathered, full: codes.size === live.size ? next : null };
}
