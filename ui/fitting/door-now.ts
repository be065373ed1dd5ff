import type { PlanDoor } from '#core/plan/plan.ts';
import { live } from '../hub/live.svelte.ts';
import type { Setup } from '../station/setup-shown.ts';

/** The door of a setup as its job is planned now: a survey may have been saved since it was scanned. */
export function doorNow({ job, found }: Pick<Setup, 'job' | 'found'>): PlanDoor {
  return live.jobs.get(job.line.id)?.index.doors.get(found.door.door) ?? found.door;
}
