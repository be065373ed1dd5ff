import type { JobProgress } from './mark.ts';
import { isFinished } from './stage-state.ts';

/** What goes with a job when it is removed. */
export interface AtStake {
  /** Marks that stand: stages done, proved, spoiled. */
  readonly marks: number;
  /** Doors with a mark that are not finished. */
  readonly begun: number;
  readonly finished: number;
}

/** What was done in a job so far, counted for the question whether to remove it. */
export function atStake(progress: JobProgress): AtStake {
  const touched = new Set<string>();
  let marks = 0;
  const add = (door: string, more: number) => {
    if (more > 0) touched.add(door);
    marks += more;
  };
  for (const { door, done, proved, spoiled } of Object.values(progress.parts))
    add(door, Object.keys(done).length + Object.keys(proved).length + (spoiled === undefined ? 0 : 1));
  for (const [door, { done }] of Object.entries(progress.doors)) add(door, Object.keys(done).length);
  const finished = [...touched].filter((door) => isFinished(progress, door)).length;
  return { marks, begun: touched.size - finished, finished };
}
