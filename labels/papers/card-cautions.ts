import type { PlanStage } from '#core/plan/plan.ts';
import { gravestCaution } from '#core/telling/gravest-caution.ts';
import { cautionKeys } from '#core/words/cautions.ts';
import { say } from '#core/words/say.ts';

/** What can hurt at a stage; the gravest of any stage is on every card. */
export interface CardCaution {
  readonly text: string;
  readonly gravest: boolean;
}

/** The gravest danger of each of these stages. */
export function gravestOf(stages: readonly PlanStage[]): ReadonlySet<string> {
  return new Set(stages.map(({ stage, station }) => gravestCaution(station, stage)));
}

/** What can hurt at a stage, its gravest danger first. */
export function cautionsFor({ stage, station }: PlanStage, gravest: ReadonlySet<string>): CardCaution[] {
  const first = gravestCaution(station, stage);
  const keys = [first, ...cautionKeys(station).filter((key) => key !== first)];
  return keys.map((key) => ({ text: say(key), gravest: gravest.has(key) }));
}
