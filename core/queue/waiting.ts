import { isDoorStage } from '../stages/stage-id.ts';
import type { StationId } from '../stages/stations.ts';
import { liveDoor, type PartIndex } from '../marks/live-plan.ts';
import type { JobProgress } from '../marks/mark.ts';
import type { AsMarked } from '../measured/as-marked.ts';
import { missingBefore, nextStage } from '../marks/stage-state.ts';
import type { Plan, PlanDoor, PlanPart, PlanStage } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';

/** A job as the queue sees it. */
export interface QueueJob {
  readonly plan: Plan;
  readonly index: PartIndex;
  readonly progress: JobProgress;
  readonly line: { readonly due?: string | undefined };
  /** What was cut by settings that are others since; nothing where that is not known. */
  readonly asMarked?: readonly AsMarked[];
}

/** A part, or at assembly and fitting a whole door, that can be worked on at a station now. */
export interface Waiting {
  readonly job: string;
  readonly due?: string;
  readonly units: Units;
  readonly door: PlanDoor;
  readonly part: PlanPart;
  readonly stage: PlanStage;
}

/** What waits at a station now, in the order of the jobs and their doors. A door's own stage counts once. */
export function waitingAt(station: StationId, jobs: Iterable<QueueJob>): Waiting[] {
  const waiting: Waiting[] = [];
  for (const { plan, progress, line } of jobs)
    for (const planned of plan.doors) {
      const door = liveDoor(planned, progress);
      for (const part of door.parts) {
        const stage = nextStage(part, door, progress);
        if (stage?.station !== station || missingBefore(stage, part, door, progress).length > 0) continue;
        const due = line.due === undefined ? {} : { due: line.due };
        waiting.push({ job: plan.id, ...due, units: plan.units, door, part, stage });
        if (isDoorStage(stage.stage)) break;
      }
    }
  return waiting;
}
