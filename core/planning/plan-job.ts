import { partCode } from '../codes/part-code.ts';
import type { Job, JobDoor } from '../job/job.ts';
import { doorAsCut, specAsCut } from '../measured/apply-measured.ts';
import { type Measured, NOTHING_MEASURED } from '../measured/measured.ts';
import { nominalFaults } from '../measured/nominals.ts';
import { shopForJob } from '../shop/for-job.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { Fault, Result } from '../fields/fault.ts';
import type { Language } from '../words/say.ts';
import type { Plan, PlanDoor } from '../plan/plan.ts';
import { planDoor, type PlannedDoor } from './plan-door.ts';

/** What a plan is made with besides its job and its shop. */
export interface PlanOptions {
  /** Give with each setting where it is measured from and how it was reckoned, in this language. */
  readonly why?: Language | null;
  /** Sizes as they came out, in place of those ordered. */
  readonly measured?: Measured;
  /** Plan it whatever is wrong with it: for doors that were begun under other rules. */
  readonly despite?: boolean;
}

/** The plan of a job with a shop's tools: every part, setting and note; or every fault that any of its doors has. */
export function planJob(job: Job, shop: ShopProfile, options: PlanOptions = {}): Result<Plan> {
  const { measured = NOTHING_MEASURED, despite = false } = options;
  const profile = shopForJob(job, shop);
  const faults: Fault[] = despite ? [] : nominalFaults(job, measured);
  const doors: PlanDoor[] = [];
  for (const entry of job.doors) {
    const planned = planMark(job, entry, profile, options);
    if (planned.ok) for (const door of planned.value) doors.push(door);
    else faults.push(...planned.faults);
  }
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: { format: 1, id: job.id, job: job.job, units: job.units, doors } };
}

/** The doors of one mark: reckoned once, and once more for each that was measured by itself; each with its own codes. */
function planMark(job: Job, entry: JobDoor, profile: ShopProfile, options: PlanOptions): Result<PlanDoor[]> {
  const { mark, quantity, path } = entry;
  const { measured = NOTHING_MEASURED, why = null, despite = false } = options;
  const plan = (door: string | null): Result<PlannedDoor> => {
    const asCut = door === null ? null : doorAsCut(measured, door);
    const spec = specAsCut(entry.spec, measured, asCut);
    return planDoor({ spec, door: door ?? mark, path, profile, why, asCut, despite });
  };
  let shared: Result<PlannedDoor> | null = null;
  const doors: PlanDoor[] = [];
  for (let k = 1; k <= quantity; k += 1) {
    const door = `${mark}-${k}`;
    const planned = doorAsCut(measured, door) === null ? (shared ??= plan(null)) : plan(door);
    if (!planned.ok) return planned;
    const { values, parts, stages, notes } = planned.value;
    const coded = parts.map(({ part, ...rest }) => ({
      part,
      code: partCode({ job: job.id, mark, k, part, replacement: 0 }),
      ...rest,
    }));
    doors.push({ door, mark, values, parts: coded, stages, notes });
  }
  return { ok: true, value: doors };
}
