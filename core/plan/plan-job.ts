import { partCode } from '../codes/part-code.ts';
import type { Job, JobDoor } from '../job/job.ts';
import { conditions } from '../joint/conditions.ts';
import { limitsFor } from '../joint/limits.ts';
import { wideTenon } from '../joint/tenon-conditions.ts';
import { deriveJoint, type Joint } from '../joint/derive.ts';
import { doorStages } from '../joint/door-stages.ts';
import { panels } from '../joint/panel.ts';
import { rails } from '../joint/rail.ts';
import type { PartDraft } from '../joint/stage-draft.ts';
import { stiles } from '../joint/stile.ts';
import { toolingFor } from '../joint/tooling.ts';
import { printLength } from '../length/print-length.ts';
import { printReal, real } from '../length/real.ts';
import { fitOpening, type Fit } from '../survey/fit-opening.ts';
import { surveyConditions } from '../survey/survey-conditions.ts';
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
  const once: Once = { wideTenon: false };
  for (const entry of job.doors) {
    const planned = planDoors(job, entry, profile, options.why ?? false, once);
    if (planned.ok) doors.push(...planned.value);
    else faults.push(...planned.faults);
  }
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: { format: 1, id: job.id, job: job.job, units: job.units, doors } };
}

/** Advice that is given once a job. */
interface Once {
  wideTenon: boolean;
}

/** The doors of one mark: reckoned once, printed once for each with its own codes. */
function planDoors(
  job: Job,
  { mark, quantity, path, spec }: JobDoor,
  profile: ShopProfile,
  why: boolean,
  once: Once,
): Result<PlanDoor[]> {
  const joint = deriveJoint(spec);
  const tooling = toolingFor(joint, profile);
  const found = conditions(joint, tooling, profile, path);
  const limits = limitsFor(job.units);
  const fit = spec.survey === undefined ? null : fitOpening(spec, spec.survey);
  surveyConditions(fit, spec, limits, job.units, found);
  const wide = once.wideTenon ? null : wideTenon(joint, limits);
  if (wide !== null) {
    found.advise('tenon-wide', wide.field, { width: wide.width, most: wide.most });
    once.wideTenon = true;
  }
  if (found.faults.length > 0) return { ok: false, faults: found.faults };
  const drafts: PartDraft[] = [
    ...stiles(joint, tooling, profile),
    ...rails(joint, tooling, profile),
    ...panels(joint, tooling, profile),
  ];
  const parts = drafts.map((draft) => printPart(draft, '', why));
  const stages = doorStages(joint, drafts).map((stage) => printStage(stage, why));
  const values = doorValues(joint, fit);
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

function doorValues(joint: Joint, fit: Fit | null): DoorValues {
  return {
    sightWidth: printLength(joint.sightWidth),
    shoulderToShoulder: printLength(joint.shoulderToShoulder),
    sightHeights: joint.sightHeights.map(printLength),
    finishedWidth: printLength(joint.finishedWidth),
    finishedHeight: printLength(joint.finishedHeight),
    trimEachSide: printLength(joint.trimEachSide),
    trimEachEnd: printLength(joint.trimEachEnd),
    ...(fit === null ? {} : { survey: printSurvey(fit) }),
  };
}

function printSurvey({ opening, takeOff }: Fit): NonNullable<DoorValues['survey']> {
  const print = (value: number) => printReal(real(value));
  const { left, right, bottom, top } = takeOff;
  return {
    closure: print(opening.closure),
    base: opening.base,
    takeOff: {
      left: { bottom: print(left.bottom), top: print(left.top) },
      right: { bottom: print(right.bottom), top: print(right.top) },
      bottom: { left: print(bottom.left), right: print(bottom.right) },
      top: { left: print(top.left), right: print(top.right) },
    },
  };
}
