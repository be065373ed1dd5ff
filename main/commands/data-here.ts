import { say } from '#core/words/say.ts';
import { networkPart, readNetworkPart } from '../network/archived-network.ts';
import { archiveLines } from '../store/archive/archive-lines.ts';
import { Backups } from '../store/archive/backups.ts';
import { disk } from '../store/files/disk.ts';
import { holdFolder } from '../store/files/hold-folder.ts';
import { restoringInto } from '../store/archive/restore.ts';
import { inThisThread } from '../store/documents/make-job.ts';
import { Store } from '../store/store.ts';
import { DataFault, type DataWork } from './data-work.ts';

/** Does the work on a data folder itself; null when a hub holds it. */
export async function dataHere(folder: string, version: string): Promise<DataWork | null> {
  await disk.makeFolder(folder);
  const taken = await holdFolder(disk, folder);
  if (!taken.ok) return null;
  const { held } = taken;
  const { files } = held;
  try {
    const store = await Store.open({ port: files, folder, version, renew: !held.certain });
    const backups = new Backups(files, folder);
    const restore = restoringInto(files, folder, store, backups, version, inThisThread, {
      read: readNetworkPart,
      // No hub runs, and with it no network.
      replacing: (put) => put(),
    });
    return {
      list: () => backups.list(),
      backup: () => backups.make(store, version, store.shop.document.shop.backup.keep),
      async restore(name) {
        const bytes = await backups.open(name);
        if (bytes === null) throw new DataFault(`there is no backup ${name}`);
        return restore(name, bytes, 'own');
      },
      async everything(withNetworkKeys) {
        await store.jobs.ready();
        const network = withNetworkKeys ? await networkPart(files, folder) : null;
        if (withNetworkKeys && network === null) throw new DataFault(say('api.no-network-keys', {}, 'en'));
        return archiveLines(store, version, network);
      },
      take: (from, bytes) => restore(from, bytes, 'foreign'),
      async close() {
        await store.close();
        await held.release();
      },
    };
  } catch (error) {
    await held.release();
    throw error;
  }
}
