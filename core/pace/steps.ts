import { liveDoor } from '../marks/live-plan.ts';
import type { JobProgress } from '../marks/mark.ts';
import { doorDone, recordedOf } from '../marks/stage-state.ts';
import type { Plan } from '../plan/plan.ts';

/** What of a job is done, by the times of its marks in milliseconds since 1970, and how many steps are left. */
export interface Steps {
  readonly times: readonly number[];
  readonly left: number;
}

/** A job's steps: every stage of its live blanks and of its doors. What was done to a blank that is given up is lost and counts as undone. */
export function stepsOf(plan: Plan, progress: JobProgress): Steps {
  const times: number[] = [];
  let all = 0;
  for (const planned of plan.doors) {
    const door = liveDoor(planned, progress);
    all += door.stages.length;
    for (const { at } of Object.values(doorDone(progress, door.door))) times.push(Date.parse(at));
    for (const { code, stages } of door.parts) {
      all += stages.length;
      for (const { at } of Object.values(recordedOf(progress, code))) times.push(Date.parse(at));
    }
  }
  return { times, left: Math.max(0, all - times.length) };
}
