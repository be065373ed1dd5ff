/** A door's name and its place in the job, by which doors follow each other. */
export interface NamedDoor {
  readonly door: string;
  readonly mark: string;
  readonly at: number;
}

/** Doors that follow each other, by name, and how many they are. */
export interface DoorRun {
  readonly text: string;
  readonly count: number;
}

/**
 * Names of doors, those that follow each other in the job as a run: "A-1 … A-12". A run stays within a mark, unless runs
 * over several marks are asked for.
 */
export function doorRuns(doors: readonly NamedDoor[], over: 'mark' | 'job' = 'mark'): DoorRun[] {
  const runs: NamedDoor[][] = [];
  for (const door of doors) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const follows = last?.at === door.at - 1 && (over === 'job' || last.mark === door.mark);
    if (follows) run?.push(door);
    else runs.push([door]);
  }
  return runs.flatMap((run) => {
    const [first, last] = [run[0]?.door ?? '', run.at(-1)?.door ?? ''];
    return run.length > 2
      ? [{ text: `${first} … ${last}`, count: run.length }]
      : run.map(({ door }) => ({ text: door, count: 1 }));
  });
}
