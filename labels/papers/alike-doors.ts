import { createHash } from 'node:crypto';
import type { PlanDoor } from '#core/plan/plan.ts';

/** Doors that are made alike in every part and setting: one of them, and all of them in the plan's order. */
export interface AlikeDoors {
  readonly door: PlanDoor;
  readonly doors: readonly PlanDoor[];
}

/**
 * Doors by what is made: those with the same sizes, parts, exact settings and notes are one group, whatever their names
 * and codes. What is exactly the same is the same in settable numbers too. Yields after every door, as a large job takes
 * its time; gives the groups in the plan's order of their first doors.
 */
export function* alikeDoors(doors: readonly PlanDoor[]): Generator<undefined, AlikeDoors[]> {
  const found = new Map<string, PlanDoor[]>();
  const sumOf = summing();
  for (const door of doors) {
    const key = keyOf(door, sumOf);
    const known = found.get(key);
    if (known === undefined) found.set(key, [door]);
    else known.push(door);
    yield;
  }
  return [...found.values()].flatMap((alike) => {
    const [door] = alike;
    return door === undefined ? [] : [{ door, doors: alike }];
  });
}

/** Everything of a door but its name, its mark and its codes. Where its notes point to in the job file is not made. */
function keyOf({ values, parts, stages, notes }: PlanDoor, sumOf: (made: object) => string): string {
  return JSON.stringify([
    sumOf(values),
    parts.map((part) => [part.part, part.length, part.width, part.thickness, sumOf(part.stages)]),
    sumOf(stages),
    notes.map(({ id, level, message, figures }) => [id, level, message, figures]),
  ]);
}

/** A sum of what something says, reckoned once for each object: doors of one mark share theirs. */
function summing(): (made: object) => string {
  const known = new WeakMap<object, string>();
  return (made) => {
    const before = known.get(made);
    if (before !== undefined) return before;
    const sum = createHash('sha256').update(JSON.stringify(made)).digest('base64');
    known.set(made, sum);
    return sum;
  };
}
