import { setImmediate as pause } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { wordsOf } from '../../files/file-port.ts';
import { type LogPlace, type LogReader, type Reached, scanLog } from '../read-log.ts';
import type { Said } from './batch.ts';
import type { LogAsked } from './entry.ts';
import { Unpacker } from './unpack.ts';

/** Another thread that reads a log. */
export interface Beside {
  /** What it says next; rejects when it failed or ended. */
  next(): Promise<Said>;
  /** It may hand on one more batch. */
  more(): void;
  end(): Promise<unknown>;
}

/** Less than this is read sooner here than there. */
const MUCH = 8 * 1024 * 1024;

/**
 * Reads large logs with another thread: it reads the file, checks its lines and takes them apart, while this one makes the
 * entries and takes them. What comes of it is the same, and where that thread fails, this one reads on from where it came
 * to, and `report` is told why.
 */
export function readBeside(
  open: (asked: LogAsked) => Beside,
  report: (trouble: string) => void,
  much = MUCH,
): LogReader {
  return async (port, path, from, each) => {
    const size = (await port.size(path)) ?? 0;
    if (size - from.bytes < much) return scanLog(port, path, from, each);
    const unpacker = new Unpacker();
    let reached: LogPlace | Reached = from;
    let beside: Beside | null = null;
    try {
      for (;;) {
        let said: Said;
        try {
          beside ??= open({ path, from });
          said = await beside.next();
        } catch (error) {
          said = { failed: wordsOf(error) };
        }
        if ('failed' in said) {
          report(`the log is read on in one thread: ${said.failed}`);
          return await scanLog(port, path, reached, each);
        }
        unpacker.unpack(said.batch, each);
        if (said.done !== null) return said.done;
        ({ reached } = said.batch);
        beside?.more();
        // Others get their turn, however many batches wait.
        await pause();
      }
    } finally {
      await beside?.end();
    }
  };
}

/** A thread of the hub's that reads a log from the disk; `entry` is its built file. */
export function besideIn(entry: string): (asked: LogAsked) => Beside {
  return (asked) => {
    const worker = new Worker(entry, { stdin: false, execArgv: [], workerData: asked });
    const waiting: Said[] = [];
    let tell: (() => void) | null = null;
    const say = (said: Said) => {
      waiting.push(said);
      tell?.();
      tell = null;
    };
    worker.on('message', say);
    worker.on('error', (error) => say({ failed: wordsOf(error) }));
    worker.on('exit', () => say({ failed: 'the thread has ended' }));
    return {
      async next() {
        for (;;) {
          const said = waiting.shift();
          if (said !== undefined) return said;
          await new Promise<void>((again) => (tell = again));
        }
      },
      more: () => worker.postMessage({ more: 1 }),
      end: () => worker.terminate(),
    };
  };
}
