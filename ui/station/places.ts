import type { PlaceName } from '#core/plan/place-name.ts';
import type { Place, PlanStage } from '#core/plan/plan.ts';

/** Where a setup stands among the places of its stage: which one is on the screen, and which were. */
export interface AtPlace {
  /** Undefined where the stage is set once. */
  readonly place: PlaceName | undefined;
  readonly seen: readonly PlaceName[];
}

/** A setup begins at its first place. */
export function firstPlace({ places }: PlanStage): AtPlace {
  const at = places?.[0]?.at;
  return { place: at, seen: at === undefined ? [] : [at] };
}

/** Goes to a place. */
export function toPlace({ seen }: AtPlace, at: PlaceName): AtPlace {
  return { place: at, seen: seen.includes(at) ? seen : [...seen, at] };
}

/** The next place that was not on the screen yet, after the one that is and round again; null when all were. */
export function nextPlace({ places = [] }: PlanStage, { place, seen }: AtPlace): PlaceName | null {
  const names = places.map(({ at }: Place) => at);
  const from = names.findIndex((at) => at === place) + 1;
  return [...names.slice(from), ...names.slice(0, from)].find((at) => !seen.includes(at)) ?? null;
}
