import type { Plan, PlanDoor, PlanPart } from './plan.ts';

/** The part with this code, and its door. Null when the plan has none. */
export function findPart(
  plan: Plan,
  code: string,
): { readonly door: PlanDoor; readonly part: PlanPart } | null {
  for (const door of plan.doors) {
    const part = door.parts.find((each) => each.code === code);
    if (part !== undefined) return { door, part };
  }
  return null;
}

/** The part of this name in this door ("A-1", "stile-left"), for a sticker that was lost. */
export function findPartByName(
  plan: Plan,
  doorId: string,
  name: string,
): { readonly door: PlanDoor; readonly part: PlanPart } | null {
  const door = plan.doors.find((each) => each.door === doorId);
  const part = door?.parts.find((each) => each.part === name);
  return door === undefined || part === undefined ? null : { door, part };
}
