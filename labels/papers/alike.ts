import type { PartName } from '#core/plan/part-name.ts';
import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { isOfKind } from '#core/stages/stage-id.ts';
import type { StageKind } from '#core/stages/table.ts';

/** A part that several doors have alike: one of them, and all doors that share it. */
export interface Alike {
  readonly part: PlanPart;
  readonly door: PlanDoor;
  readonly doors: readonly string[];
  /** The names of the parts that are alike, without repeats: both stiles of a pair. */
  readonly parts: readonly PartName[];
}

/** Parts with the same key drawn once, in the plan's order; null leaves a part out. */
export function alike(plan: Plan, keyOf: (part: PlanPart) => string | null): Alike[] {
  const found = new Map<
    string,
    { part: PlanPart; door: PlanDoor; doors: Set<string>; parts: Set<PartName> }
  >();
  for (const door of plan.doors)
    for (const part of door.parts) {
      const key = keyOf(part);
      if (key === null) continue;
      const known = found.get(key);
      if (known === undefined)
        found.set(key, { part, door, doors: new Set([door.door]), parts: new Set([part.part]) });
      else {
        known.doors.add(door.door);
        known.parts.add(part.part);
      }
    }
  return [...found.values()].map(({ doors, parts, ...rest }) => ({
    ...rest,
    doors: [...doors],
    parts: [...parts],
  }));
}

/** What a part is as cut: its size and the settings of these kinds of stages, so that alike parts have the same text. */
export function cutKey(part: PlanPart, kinds: readonly StageKind[]): string {
  const cuts = part.stages
    .filter(({ stage }) => kinds.some((kind) => isOfKind(stage, kind)))
    .map(({ stage, settings, places }) => [
      stage,
      settings,
      places?.map(({ at, settings: own }) => [at, own]) ?? [],
    ]);
  return JSON.stringify([part.length, part.width, part.thickness, cuts]);
}
