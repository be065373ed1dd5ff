import type { Plan } from '../plan/plan.ts';
import type { JobProgress } from './mark.ts';

/** What would stand in no plan any more though it was marked: a door, or one part of a door that stays. */
export interface LostMarks {
  readonly door: string;
  readonly part?: string | undefined;
  /** How many marks would count no more: stages done, proved, spoiled. */
  readonly marks: number;
}

/**
 * The doors and parts of the plan of before that have marks and are not in the plan of now. Nothing is wiped out: marks
 * belong to a job, a mark and a part, and count again when those come back.
 */
export function lostMarks(before: Plan, now: Plan, progress: JobProgress): LostMarks[] {
  const later = new Map(now.doors.map(({ door, parts }) => [door, new Set(parts.map(({ part }) => part))]));
  const marked = countedMarks(progress);
  return before.doors.flatMap(({ door, parts }): LostMarks[] => {
    const left = later.get(door);
    if (left === undefined) {
      const all = [...(marked.get(door)?.values() ?? [])].reduce((sum, each) => sum + each, 0);
      return all === 0 ? [] : [{ door, marks: all }];
    }
    return parts.flatMap(({ part }): LostMarks[] => {
      const marks = left.has(part) ? 0 : (marked.get(door)?.get(part) ?? 0);
      return marks === 0 ? [] : [{ door, part, marks }];
    });
  });
}

/** How many marks stand, by door and part; those of the whole door under "". */
function countedMarks({ parts, doors }: JobProgress): Map<string, Map<string, number>> {
  const counted = new Map<string, Map<string, number>>();
  const add = (door: string, part: string, marks: number) => {
    const own = counted.get(door) ?? new Map<string, number>();
    counted.set(door, own.set(part, (own.get(part) ?? 0) + marks));
  };
  for (const { door, part, done, proved, spoiled } of Object.values(parts))
    add(door, part, Object.keys(done).length + Object.keys(proved).length + (spoiled === undefined ? 0 : 1));
  for (const [door, { done }] of Object.entries(doors)) add(door, '', Object.keys(done).length);
  return counted;
}
