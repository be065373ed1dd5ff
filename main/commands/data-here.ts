import { archiveLines } from '../store/archive/archive-lines.ts';
import { Backups } from '../store/archive/backups.ts';
import { disk } from '../store/files/disk.ts';
import { takeLock } from '../store/files/lock.ts';
import { restoringInto } from '../store/archive/restore.ts';
import { Store } from '../store/store.ts';
import { DataFault, type DataWork } from './data-work.ts';

/** Does the work on a data folder itself; null when a hub holds it. */
export async function dataHere(folder: string, version: string): Promise<DataWork | null> {
  await disk.makeFolder(folder);
  const lock = await takeLock(disk, folder, process.pid);
  if (!lock.ok) return null;
  try {
    const store = await Store.open({ port: disk, folder, version });
    const backups = new Backups(disk, folder);
    const restore = restoringInto(disk, folder, store, backups, version);
    return {
      list: () => backups.list(),
      backup: () => backups.make(store, version, store.shop.document.shop.backup.keep),
      async restore(name) {
        const bytes = await backups.open(name);
        if (bytes === null) throw new DataFault(`there is no backup ${name}`);
        return restore(name, bytes, 'own');
      },
      async everything() {
        return archiveLines(store, version);
      },
      take: (from, bytes) => restore(from, bytes, 'foreign'),
      async close() {
        await store.close();
        await lock.release();
      },
    };
  } catch (error) {
    await lock.release();
    throw error;
  }
}
