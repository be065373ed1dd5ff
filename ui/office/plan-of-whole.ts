import { isTree, type Tree } from '#core/fields/read-shape.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';

/** Faults come a hundred at a time, so rows may have to be left out more than once. */
const ROUNDS = 5;

/**
 * The plan of those rows of a form that are finished, while others are still typed: what is drawn and warned of beside
 * the form. Null when there is no such row, or when a measure that all doors share is wrong.
 */
export function planOfWhole(file: Tree): Plan | null {
  const { job: named, due: wished, ...rest } = file;
  let [job, due] = [named, wished];
  let doors = Array.isArray(file.doors) ? file.doors.filter(isTree) : [];
  for (let round = 0; round < ROUNDS && doors.length > 0; round += 1) {
    const planned = planFile({ ...rest, job, ...(due === undefined ? {} : { due }), doors });
    if (planned.ok) return planned.value;
    const wrong = new Set<number>();
    for (const { path, code } of planned.faults) {
      const row = /^doors\[(\d+)\]/.exec(path)?.[1];
      if (row !== undefined) wrong.add(Number(row));
      else if (code === 'more-faults') continue;
      else if (path === 'job') job = 'x';
      else if (path === 'due') due = undefined;
      else return null;
    }
    doors = doors.filter((_, k) => !wrong.has(k));
  }
  return null;
}
