import type { PaperKind } from '#core/api/prints-api.ts';
import type { Plan } from '#core/plan/plan.ts';
import { spokenNow } from '#core/words/say.ts';
import { type PlanSource, planFrom } from './plan-source.ts';

/**
 * The plan that a paper is made from. Set-up cards say where each setting is measured from: of the marks that are asked
 * for alone, since that takes its time. Names are left to be refused by whoever makes the paper.
 */
export function planOfPaper(source: PlanSource, kind: PaperKind, doors: readonly string[] | undefined): Plan {
  if (kind !== 'cards') return planFrom(source);
  if (doors === undefined) return planFrom(source, spokenNow());
  const plan = planFrom(source);
  const asked = new Set(doors);
  const chosen = plan.doors.filter(({ door, mark }) => asked.has(door) || asked.has(mark));
  const explained = planFrom(source, spokenNow(), [...new Set(chosen.map(({ mark }) => mark))]);
  const byName = new Map(explained.doors.map((door) => [door.door, door]));
  return { ...plan, doors: plan.doors.map((door) => byName.get(door.door) ?? door) };
}
