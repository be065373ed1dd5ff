import type { Plan, PlanDoor, PlanPart } from '../plan/plan.ts';
import type { JobProgress } from './mark.ts';
import { own } from './progress.ts';

/** The code of the blank that stands for a part now: the last replacement, or the part's first blank. */
export function liveCode(progress: JobProgress, code: string): string {
  let live = code;
  for (
    let next = own(progress.parts, live)?.replacedBy;
    next !== undefined;
    next = own(progress.parts, live)?.replacedBy
  )
    live = next;
  return live;
}

/** A door whose spoiled parts carry the codes of their replacements. */
export function liveDoor(door: PlanDoor, progress: JobProgress): PlanDoor {
  const codes = door.parts.map(({ code }) => liveCode(progress, code));
  if (codes.every((code, k) => code === door.parts[k]?.code)) return door;
  return { ...door, parts: door.parts.map((part, k) => ({ ...part, code: codes[k] ?? part.code })) };
}

/** A plan whose spoiled parts carry the codes of their replacements. */
export function livePlan(plan: Plan, progress: JobProgress): Plan {
  return { ...plan, doors: plan.doors.map((door) => liveDoor(door, progress)) };
}

/** Where to find the parts of a plan by code and its doors by name, without looking through all of them. */
export interface PartIndex {
  readonly parts: ReadonlyMap<string, { readonly door: string; readonly part: string }>;
  readonly doors: ReadonlyMap<string, PlanDoor>;
}

/** An index of a plan's first blanks; replacements are found through the progress. */
export function indexParts(plan: Plan): PartIndex {
  const parts = new Map<string, { door: string; part: string }>();
  for (const { door, parts: blanks } of plan.doors)
    for (const { code, part } of blanks) parts.set(code, { door, part });
  return { parts, doors: new Map(plan.doors.map((door) => [door.door, door])) };
}

/** A part as it stands now: its live door, and the live blank of its name, which may carry another code than was asked for. */
export interface Located {
  readonly door: PlanDoor;
  readonly part: PlanPart;
}

/** The part that a code stands or stood for; null when the plan has none. */
export function locate(index: PartIndex, progress: JobProgress, code: string): Located | null {
  const named = index.parts.get(code) ?? own(progress.parts, code);
  const planned = named === undefined ? undefined : index.doors.get(named.door);
  if (named === undefined || planned === undefined) return null;
  const door = liveDoor(planned, progress);
  const part = door.parts.find((each) => each.part === named.part);
  return part === undefined ? null : { door, part };
}
