import { createHash } from 'node:crypto';
import type { DoorsAnswer } from '#core/api/plan-api.ts';
import type { Plan, PlanDoor } from '#core/plan/plan.ts';
import { speakDoors } from '#core/telling/speak-plan.ts';
import type { Language } from '#core/words/languages.ts';

/** The doors of a plan by name and codes; those of one tag are alike but for these. */
export function listDoors(plan: Plan, language: Language): DoorsAnswer {
  const { format, id, job, units } = plan;
  // Doors that were reckoned once share what they measure; what is said of them may differ all the same.
  const known = new Map<PlanDoor['values'], { readonly notes: PlanDoor['notes']; readonly tag: string }>();
  const tagOf = (door: PlanDoor): string => {
    const before = known.get(door.values);
    if (before?.notes === door.notes) return before.tag;
    const [spoken] = speakDoors([door], units, language);
    const same = {
      mark: door.mark,
      values: door.values,
      parts: door.parts.map(({ code: _code, ...part }) => part),
      stages: door.stages,
      notes: spoken?.notes,
    };
    const tag = createHash('sha256').update(JSON.stringify(same)).digest('base64url').slice(0, 12);
    known.set(door.values, { notes: door.notes, tag });
    return tag;
  };
  return {
    format,
    id,
    job,
    units,
    doors: plan.doors.map((door) => ({
      door: door.door,
      tag: tagOf(door),
      codes: door.parts.map(({ code }) => code),
    })),
  };
}
