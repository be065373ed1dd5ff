import type { PlanStage } from '#core/plan/plan.ts';

/** Where a setup stands among the places of its stage: which one is on the screen, and which were. */
export interface AtPlace {
  /** Undefined where the stage is set once. */
  readonly place: string | undefined;
  readonly seen: readonly string[];
}

/** A setup begins at its first place. */
export function firstPlace({ places = [] }: PlanStage): AtPlace {
  const at = places[0]?.at;
  return { place: at, seen: at === undefined ? [] : [at] };
}

/** Goes to a place. */
export function toPlace({ seen }: AtPlace, at: string): AtPlace {
  return { place: at, seen: seen.includes(at) ? seen : [...seen, at] };
}

/** The next place that was not on the screen yet, after the one that is and round again; null when all were. */
export function nextPlace({ places = [] }: PlanStage, { place, seen }: AtPlace): string | null {
  const names = places.map(({ at }) => at);
  const from = names.indexOf(place ?? '') + 1;
  return [...names.slice(from), ...names.slice(0, from)].find((at) => !seen.includes(at)) ?? null;
}
