import { join } from 'node:path';
import type { JobMaker } from '../documents/job-maker.ts';
import { inThisThread } from '../documents/make-job.ts';
import type { Backups } from './backups.ts';
import { type FilePort, StoreBusy } from '../files/file-port.ts';
import type { Origin } from './read-archive.ts';
import { stageArchive } from './stage-archive.ts';
import type { Store } from '../store.ts';
import { INCOMING, swapBegun } from './swap.ts';

/** What is in place now, when it was made, and the backup of what was before. */
export interface Restored {
  readonly jobs: number;
  readonly entries: number;
  readonly made: string;
  readonly before: string;
}

/** Puts an archive in place of what is there. `from` is written into the log. */
export type Restoring = (from: string, bytes: AsyncIterable<Buffer>, origin: Origin) => Promise<Restored>;

/**
 * Puts archives in place of a store's data, one at a time: received, unpacked and opened while work goes on. Only then
 * nothing is taken for as long as the backup of what was and the swap need, and no other backup runs.
 */
export function restoringInto(
  port: FilePort,
  folder: string,
  store: Store,
  backups: Backups,
  version: string,
  maker: JobMaker = inThisThread,
): Restoring {
  let receiving = false;
  return async (from, bytes, origin) => {
    if (receiving) throw new StoreBusy('other data are being received to be put in place');
    receiving = true;
    try {
      const {
        jobs,
        entries,
        head,
        folder: incoming,
      } = await stageArchive(port, folder, bytes, origin, version, maker);
      const before = await backups.alone((make) =>
        store.replaceAll(from, incoming, () => make(store, version)),
      );
      return { jobs, entries, made: head.made, before: before.name };
    } catch (error) {
      await removeUnused(port, folder).catch(() => undefined);
      throw error;
    } finally {
      receiving = false;
    }
  };
}

/** What was received and is not to be put in place; what a swap has begun with is left to it. */
async function removeUnused(port: FilePort, folder: string): Promise<void> {
  if (!(await swapBegun(port, folder))) await port.remove(join(folder, INCOMING));
}
