import { isMainThread } from 'node:worker_threads';

let mostHere = Number.POSITIVE_INFINITY;

/** From here on the hub's own thread refuses to hold a plan of more doors: it would stand still meanwhile. Other threads, and commands, hold any. */
export function holdNoPlanOver(doors: number): void {
  mostHere = doors;
}

/** Throws where a plan of so many doors is not for this thread. */
export function allowPlanOf(doors: number): void {
  if (isMainThread && doors > mostHere)
    throw new Error(`a plan of ${doors} doors was made in the thread that answers marks`);
}
