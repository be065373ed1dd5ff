import type { Backups } from './backups.ts';
import type { FilePort } from './file-port.ts';
import { stageArchive } from './stage-archive.ts';
import type { Store } from './store.ts';

/** What is in place now, when it was made, and the backup of what was before. */
export interface Restored {
  readonly jobs: number;
  readonly entries: number;
  readonly made: string;
  readonly before: string;
}

/** Puts an archive in place of what is there. `from` is written into the log. */
export type Restoring = (from: string, bytes: AsyncIterable<Buffer>) => Promise<Restored>;

/** Puts archives in place of a store's data: read whole and opened before anything is touched, after a backup of what was. */
export function restoringInto(
  port: FilePort,
  folder: string,
  store: Store,
  backups: Backups,
  version: string,
): Restoring {
  return async (from, bytes) => {
    const { jobs, entries, head, before } = await store.replaceAll(from, async () => {
      const backup = await backups.make(store, version, Number.POSITIVE_INFINITY);
      return { ...(await stageArchive(port, folder, bytes, version)), before: backup.name };
    });
    return { jobs, entries, made: head.made, before };
  };
}
