import { type LogFile, type LogPlace, type Reached, type ScannedLog, scanLines } from '../read-log.ts';
import type { Said } from './batch.ts';
import { memoryOf, Packer, standing } from './pack.ts';

/** A batch is handed on when it has so many entries, or so many bytes of JSON. */
const ENTRIES = 3500;
const JSON_BYTES = 1024 * 1024;
/** So many batches are on their way at once: what the other thread has not yet taken is held in memory. */
export const BATCHES_AHEAD = 4;

/** What the other thread is told by. */
export interface Telling {
  readonly say: (said: Said, memory: ArrayBuffer[]) => void;
  /** Waits until the other thread has room for one more. */
  readonly room: () => Promise<void> | undefined;
}

/** Reads a log as `scanLog` does, and tells another thread what stands in it. */
export async function tellLog(
  file: LogFile,
  path: string,
  from: LogPlace | Reached,
  { say, room }: Telling,
): Promise<void> {
  const packer = new Packer();
  const handOn = (reached: Reached, done: ScannedLog | null) => {
    const batch = packer.take(reached);
    say({ batch, done }, memoryOf(batch));
  };
  const done = await scanLines(file, path, {
    from,
    make: standing,
    each: ({ seq, entry }, place) => packer.add(seq, place, entry),
    reached(reached) {
      if (packer.count < ENTRIES && packer.bytes < JSON_BYTES) return undefined;
      handOn(reached(), null);
      return room();
    },
  });
  handOn({ ...done, passed: 0 }, done);
}
