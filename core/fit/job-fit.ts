import type { Units } from '../length/units.ts';
import { partsOf } from '../plan/parts-of.ts';
import type { Plan, PlanDoor } from '../plan/plan.ts';
import { printLength } from '../length/print-length.ts';
import type { Tolerances } from '../shop/shop-profile.ts';
import { type Closure, judge, type Meeting } from './closure.ts';
import { frameMeetings } from './frame-meetings.ts';
import { outsideMeetings } from './outside-meetings.ts';
import { panelMeetings } from './panel-meetings.ts';

/** Doors that close alike, and how. */
export interface FitKind {
  readonly doors: readonly string[];
  readonly closures: readonly Closure[];
}

/** Everything that has to close on a door, judged by the shop's own ±; what is alike on several parts once. In the job's units. */
export function doorFit(
  door: Pick<PlanDoor, 'door' | 'parts' | 'values'>,
  units: Units,
  tolerances: Tolerances,
): Closure[] {
  const parts = partsOf(door);
  const meetings: Meeting[] = [
    ...frameMeetings(parts, units),
    ...panelMeetings(parts, door.values, units),
    ...outsideMeetings(parts, door.values, units),
  ];
  const closures = new Map<string, Closure>();
  for (const meeting of meetings) {
    const judged = judge(meeting, tolerances);
    const key = likeness(judged);
    const known = closures.get(key);
    closures.set(key, known === undefined ? judged : { ...known, parts: [...known.parts, ...judged.parts] });
  }
  return [...closures.values()];
}

/** How the doors of a job close, those that do it alike once, in the plan's order. */
export function jobFit(plan: Plan, tolerances: Tolerances): FitKind[] {
  const kinds = new Map<string, { doors: string[]; closures: readonly Closure[] }>();
  const known = new Map<string, string>();
  for (const door of plan.doors) {
    const made = `${JSON.stringify(door.values)} ${JSON.stringify(door.parts.map(({ code: _code, ...part }) => part))}`;
    const before = known.get(made);
    const alike = before === undefined ? undefined : kinds.get(before);
    if (alike !== undefined) {
      alike.doors.push(door.door);
      continue;
    }
    const closures = doorFit(door, plan.units, tolerances);
    const key = closures.map((each) => `${likeness(each)} ${each.parts.join()}`).join('; ');
    known.set(made, key);
    const kind = kinds.get(key);
    if (kind === undefined) kinds.set(key, { doors: [door.door], closures });
    else kind.doors.push(door.door);
  }
  return [...kinds.values()];
}

/** Closures of the same kind with the same room, limits and ± are one. */
function likeness({ id, room, least, most, worst, verdict }: Closure): string {
  const limits = [least, most].map((limit) => (limit === null ? '-' : printLength(limit)));
  return [id, printLength(room), ...limits, printLength(worst.least), verdict].join(' ');
}

/** Those that close only by luck or not at all, the worst first. */
export function doubtful(closures: readonly Closure[]): Closure[] {
  const RANK = { open: 0, unlikely: 1, 'by-luck': 2, closes: 3 } as const;
  return closures
    .filter(({ verdict }) => verdict !== 'closes')
    .sort((a, b) => RANK[a.verdict] - RANK[b.verdict]);
}
