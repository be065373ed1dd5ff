import type { Units } from '#core/length/units.ts';
import type { PlanPart, PlanStage, SettingValue } from '#core/plan/plan.ts';
import { cautionsOf, cautionText } from '#core/telling/cautions-of.ts';
import { withUnit } from '../pdf/value-on-paper.ts';

/** What can hurt at a stage; the gravest of a stage is on every card. */
export interface CardCaution {
  readonly text: string;
  readonly gravest: boolean;
}

/** What can hurt at a stage of a part, or of the whole door, its gravest danger first. */
export function cautionsFor(stage: PlanStage, part: PlanPart | undefined, units: Units): CardCaution[] {
  const lengths = { units, read: (value: SettingValue) => withUnit(value, units) };
  const told = cautionsOf(stage, { ...(part === undefined ? {} : { part }), lengths });
  return told.map((caution, k) => ({ text: cautionText(caution), gravest: k === 0 }));
}

/** Each caution once, as grave as it is at any stage; the gravest of all stages before the others. */
export function eachOnce(cautions: readonly CardCaution[]): CardCaution[] {
  const gravest = new Map<string, boolean>();
  for (const { text, gravest: here } of cautions) gravest.set(text, here || gravest.get(text) === true);
  const all = [...gravest].map(([text, most]): CardCaution => ({ text, gravest: most }));
  return [...all.filter((each) => each.gravest), ...all.filter((each) => !each.gravest)];
}
