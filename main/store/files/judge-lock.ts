import { setTimeout as pause } from 'node:timers/promises';
import type { FilePort } from './file-port.ts';
import type { FoundLock } from './holder.ts';
import { type ProcessTable, UNKNOWN } from './process-table.ts';

/** How often a holder's heart beats, how often it is looked at, and after how long without a beat it is over; in ms. */
export interface Beat {
  readonly everyMs: number;
  readonly lookMs: number;
  readonly stillMs: number;
}

export const BEAT: Beat = { everyMs: 2000, lookMs: 250, stillMs: 10_000 };

/**
 * What became of a lock's holder: it lives; it is over, and nothing of it can still be written; or its heart stood still,
 * which may be one that was stopped and wakes again.
 */
export type Verdict = 'lives' | 'over' | 'still';

/** Locks that this very process holds: where start times cannot be told, its own number alone says nothing. */
export const heldHere = new Set<string>();

/**
 * Judges a lock at once where its process can be looked up, or where its heart has stood still for long enough already;
 * else by watching its heart for as long as that takes. `probe` was written in the same folder just now.
 */
export async function judgeLock(
  port: FilePort,
  found: FoundLock,
  pid: number,
  table: ProcessTable,
  beat: Beat,
  probe: string,
): Promise<Verdict> {
  const known = atOnce(found, pid, table);
  if (known !== null) return known;
  if (isOfOtherBoot(found, table) && (await stoodStill(port, found, beat, probe))) return 'still';
  return watchHeart(port, found, beat);
}

/** After a power cut nobody beats any more, and nobody is to wait for that. Within one boot a machine may have slept. */
function isOfOtherBoot({ holder }: FoundLock, { boot }: ProcessTable): boolean {
  return holder !== null && holder.boot !== UNKNOWN && boot !== UNKNOWN && holder.boot !== boot;
}

/** FAT keeps when a file was written to two seconds (Microsoft, FAT File System Specification): so much may lie between two times that are one. */
const COARSEST_MS = 2000;

/**
 * Was the last beat longer before the probe than a heart may stand still? Both times are by the one clock of that file
 * system, whichever machine's that is. A clock that was set back since tells nothing, and the heart is watched.
 */
async function stoodStill(
  port: FilePort,
  found: FoundLock,
  { stillMs }: Beat,
  probe: string,
): Promise<boolean> {
  try {
    const [beaten, now] = [await port.modified(found.path), await port.modified(probe)];
    return beaten !== null && now !== null && now - beaten > stillMs + COARSEST_MS;
  } catch {
    return false;
  }
}

/** Null where only the heart can tell. */
export function atOnce({ holder, path }: FoundLock, pid: number, table: ProcessTable): Verdict | null {
  if (holder === null || holder.boot !== table.boot) return null;
  if (table.boot === UNKNOWN) return heldHere.has(path) ? 'lives' : holder.pid === pid ? 'still' : null;
  if (holder.space === '') return table.started(holder.pid) === holder.started ? 'lives' : 'still';
  if (holder.space !== table.space || table.space === UNKNOWN) return null;
  return table.started(holder.pid) === holder.started ? 'lives' : 'over';
}

/**
 * Any change is a beat. Time counts only as it was looked at: a machine that slept meanwhile gives the other as long as
 * ever. No clock of another machine is asked.
 */
async function watchHeart(port: FilePort, found: FoundLock, { lookMs, stillMs }: Beat): Promise<Verdict> {
  let last = performance.now();
  for (let still = 0; still < stillMs;) {
    await pause(lookMs);
    const now = await port.read(found.path).catch(() => found.bytes);
    if (now === null) return 'still';
    if (!now.equals(found.bytes)) return 'lives';
    still += Math.min(performance.now() - last, 2 * lookMs);
    last = performance.now();
  }
  return 'still';
}
