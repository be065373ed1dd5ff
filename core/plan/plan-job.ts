import { partCode } from '../codes/part-code.ts';
import type { Job, JobDoor } from '../job/job.ts';
import { conditions } from '../joint/conditions.ts';
import { deriveJoint, type Joint } from '../joint/derive.ts';
import { doorStages } from '../joint/door-stages.ts';
import { panels } from '../joint/panel.ts';
import { rails } from '../joint/rail.ts';
import type { PartDraft } from '../joint/stage-draft.ts';
import { stiles } from '../joint/stile.ts';
import { toolingFor } from '../joint/tooling.ts';
import { printLength } from '../length/print-length.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import type { DoorValues, Fault, Note, Plan, PlanDoor, Result } from './plan.ts';
import { printPart, printStage } from './print-part.ts';

export interface PlanOptions {
  /** Give with each setting where it is measured from and how it was reckoned. */
  readonly why?: boolean;
}

/** The plan of a job with a shop's tools: every part, setting and note; or every fault that any of its doors has. */
export function planJob(job: Job, profile: ShopProfile, options: PlanOptions = {}): Result<Plan> {
  const faults: Fault[] = [];
  const doors: PlanDoor[] = [];
  for (const entry of job.doors) {
    const planned = planDoors(job, entry, profile, options.why ?? false);
    if (planned.ok) doors.push(...planned.value);
    else faults.push(...planned.faults);
  }
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: { format: 1, id: job.id, job: job.job, units: job.units, doors } };
}

/** The doors of one mark: reckoned once, printed once for each with its own codes. */
function planDoors(
  job: Job,
  { mark, quantity, path, spec }: JobDoor,
  profile: ShopProfile,
  why: boolean,
): Result<PlanDoor[]> {
  const joint = deriveJoint(spec);
  const tooling = toolingFor(joint, profile);
  const found = conditions(joint, tooling, profile, path);
  if (found.faults.length > 0) return { ok: false, faults: found.faults };
  const drafts: PartDraft[] = [
    ...stiles(joint, tooling, profile),
    ...rails(joint, tooling, profile),
    ...panels(joint, tooling, profile),
  ];
  const parts = drafts.map((draft) => printPart(draft, '', why));
  const stages = doorStages(joint, drafts).map((stage) => printStage(stage, why));
  const values = doorValues(joint);
  const notes: readonly Note[] = found.notes;
  return {
    ok: true,
    value: Array.from({ length: quantity }, (_, index) => ({
      door: `${mark}-${index + 1}`,
      mark,
      values,
      parts: parts.map((part) => ({
        ...part,
        code: partCode({ job: job.id, mark, k: index + 1, part: part.part, replacement: 0 }),
      })),
      stages,
      notes,
    })),
  };
}

function doorValues(joint: Joint): DoorValues {
  return {
    sightWidth: printLength(joint.sightWidth),
    shoulderToShoulder: printLength(joint.shoulderToShoulder),
    sightHeights: joint.sightHeights.map(printLength),
    finishedWidth: printLength(joint.finishedWidth),
    finishedHeight: printLength(joint.finishedHeight),
    trimEachSide: printLength(joint.trimEachSide),
    trimEachEnd: printLength(joint.trimEachEnd),
  };
}
