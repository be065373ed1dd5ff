import { type LogFile, type LogPlace, PIECE, type Reached, type ScannedLog, scanLines } from '../read-log.ts';
import type { Said } from './batch.ts';
import { memoryOf, Packer, standing } from './pack.ts';

/** How much is handed on at a time. */
export interface Measure {
  /** A batch has so many entries, or so many bytes of JSON, and what else stands in the piece of the file. */
  readonly entries: number;
  readonly bytes: number;
  readonly piece: number;
  /** So many texts are kept in a list before it is begun anew. */
  readonly texts: number;
}

/** So little that who takes it keeps nobody waiting meanwhile. */
const MEASURE: Measure = { entries: 1500, bytes: 1024 * 1024, piece: PIECE, texts: 1 << 16 };
/** So many batches are on their way at once: what the other thread has not yet taken is held in memory. */
export const BATCHES_AHEAD = 8;

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
  measure = MEASURE,
): Promise<void> {
  const packer = new Packer(measure.texts);
  const handOn = (reached: Reached, done: ScannedLog | null) => {
    const batch = packer.take(reached);
    say({ batch, done }, memoryOf(batch));
  };
  const done = await scanLines(file, path, {
    from,
    piece: measure.piece,
    make: standing,
    each: ({ seq, entry }, place) => packer.add(seq, place, entry),
    reached(reached) {
      if (packer.count < measure.entries && packer.bytes < measure.bytes) return undefined;
      handOn(reached(), null);
      return room();
    },
  });
  handOn({ ...done, passed: 0 }, done);
}
