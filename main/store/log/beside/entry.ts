import { parentPort, workerData } from 'node:worker_threads';
import { heldFile } from '../../files/disk.ts';
import type { LogPlace, Reached } from '../read-log.ts';
import type { More } from './batch.ts';
import { BATCHES_AHEAD, tellLog } from './tell-log.ts';

/** What this thread is begun with. */
export interface LogAsked {
  readonly path: string;
  readonly from: LogPlace | Reached;
}

/** The thread that reads a log: tells what stands in it, and ends. */
async function main(): Promise<void> {
  const port = parentPort;
  if (port === null) throw new Error('this is the entry of a thread');
  // The hub wrote it.
  const { path, from } = workerData as LogAsked;
  let ahead = BATCHES_AHEAD;
  let roomAgain: (() => void) | null = null;
  port.on('message', ({ more }: More) => {
    ahead += more;
    roomAgain?.();
    roomAgain = null;
  });
  const file = await heldFile(path);
  try {
    await tellLog(file, path, from, {
      say: (said, memory) => port.postMessage(said, memory),
      room() {
        ahead -= 1;
        return ahead > 0 ? undefined : new Promise((again) => (roomAgain = again));
      },
    });
  } finally {
    await file.close();
    port.close();
  }
}

await main();
