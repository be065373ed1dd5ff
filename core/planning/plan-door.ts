import type { BuiltSpec } from '../job/job.ts';
import { allowed } from '../joint/allow.ts';
import { asCutConditions } from '../joint/as-cut-conditions.ts';
import { conditions } from '../joint/conditions.ts';
import { deriveJoint, type Joint } from '../joint/derive.ts';
import { doorStages } from '../joint/door-stages.ts';
import { limitsFor } from '../length/limits.ts';
import type { StageDraft } from '../joint/stage-draft.ts';
import { toolingFor } from '../joint/tooling.ts';
import { printLength } from '../length/print-length.ts';
import { printReal, real } from '../length/real.ts';
import { eachSide } from '../plan/each-side.ts';
import type { DoorAsCut } from '../measured/measured.ts';
import type { ShopProfile } from '../shop/shop-profile.ts';
import { fitOpening, type Fit } from '../survey/fit-opening.ts';
import { surveyConditions } from '../survey/survey-conditions.ts';
import type { DoorValues, Note, PlanPart, PlanStage } from '../plan/plan.ts';
import type { Result } from '../fields/fault.ts';
import type { Language } from '../words/say.ts';
import { specForPart } from '../measured/apply-measured.ts';
import { draftsOf, partAsCut } from './part-as-cut.ts';
import { printPart, printStage } from './print-part.ts';

/** A door planned and printed, but for its name and its parts' codes. */
export interface PlannedDoor {
  readonly values: DoorValues;
  readonly parts: readonly Omit<PlanPart, 'code'>[];
  readonly stages: readonly PlanStage[];
  readonly notes: readonly Note[];
}

/** A door as it is built with the shop that makes it, and what was measured on it. */
export interface DoorToPlan {
  readonly spec: BuiltSpec;
  /** Its name: "A-1". */
  readonly door: string;
  /** Where its fields stand in the job file: "doors[0]". */
  readonly path: string;
  readonly profile: ShopProfile;
  /** In which language it is said why each value is what it is; null where nobody asks. */
  readonly why: Language | null;
  /** What was measured on this door's own parts. */
  readonly asCut: DoorAsCut | null;
  /** Plan it whatever is wrong with it. */
  readonly despite?: boolean;
}

/** One door from its settled inputs to its printed parts, stages, values and notes; or what keeps it from being made. */
export function planDoor({
  spec,
  door,
  path,
  profile,
  why,
  asCut,
  despite = false,
}: DoorToPlan): Result<PlannedDoor> {
  const joint = deriveJoint(spec);
  const found = conditions(joint, toolingFor(joint, profile), profile, path);
  const limits = limitsFor(profile.units);
  const fit = spec.survey === undefined ? null : fitOpening(spec, spec.survey);
  surveyConditions(fit, spec, limits, profile.units, found);
  if (asCut !== null) found.join(asCutConditions(joint, asCut, door, profile, found));
  if (found.faults.length > 0 && !despite) return { ok: false, faults: found.faults };
  const drafts = draftsOf(spec, profile).map((draft) => {
    const cut = partAsCut(draft, spec, asCut, profile);
    if (why === null) return cut;
    const own = specForPart(spec, asCut, draft.part);
    return allowed(cut, own === null ? joint : deriveJoint(own), profile);
  });
  const printed = new Map<StageDraft, PlanStage>();
  const reasons = why === null ? null : { units: profile.units, language: why };
  return {
    ok: true,
    value: {
      values: doorValues(joint, fit),
      parts: drafts.map((draft) => printPart(draft, reasons, printed)),
      stages: doorStages(joint, drafts).map((stage) => printStage(stage, reasons)),
      notes: found.notes,
    },
  };
}

function doorValues(joint: Joint, fit: Fit | null): DoorValues {
  const { trim } = joint;
  return {
    sightWidth: printLength(joint.sightWidth),
    shoulderToShoulder: printLength(joint.shoulderToShoulder),
    sightHeights: joint.sightHeights.map(printLength),
    finishedWidth: printLength(joint.finishedWidth),
    finishedHeight: printLength(joint.finishedHeight),
    trim: eachSide((side) => printLength(trim[side])),
    ...(trim.left.equals(trim.right) ? { trimEachSide: printLength(trim.left) } : {}),
    ...(trim.bottom.equals(trim.top) ? { trimEachEnd: printLength(trim.bottom) } : {}),
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
