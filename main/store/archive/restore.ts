import { join } from 'node:path';
import type { JobMaker } from '../documents/job-maker.ts';
import { inThisThread } from '../documents/make-job.ts';
import type { Backups } from './backups.ts';
import { type FilePort, StoreBusy } from '../files/file-port.ts';
import type { ReplacedNetwork } from './network-part.ts';
import { ArchiveFault, type Origin } from './read-archive.ts';
import { stageArchive } from './stage-archive.ts';
import type { Store } from '../store.ts';
import { INCOMING, swapBegun } from './swap.ts';

/** What is in place now, when it was made, and the backup of what was before. */
export interface Restored {
  readonly jobs: number;
  readonly entries: number;
  readonly made: string;
  readonly before: string;
  /** Were the network's keys and devices put in place too? */
  readonly network: boolean;
}

/**
 * Puts an archive in place of what is there. `from` is written into the log. One that holds the network's keys is refused
 * where it is not done at the hub's own machine (`here`).
 */
export type Restoring = (
  from: string,
  bytes: AsyncIterable<Buffer>,
  origin: Origin,
  here?: boolean,
) => Promise<Restored>;

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
  network: ReplacedNetwork = NO_NETWORK,
): Restoring {
  let receiving = false;
  return async (from, bytes, origin, here = true) => {
    if (receiving) throw new StoreBusy('other data are being received to be put in place');
    receiving = true;
    try {
      const {
        jobs,
        entries,
        head,
        network: withNetwork,
        folder: incoming,
      } = await stageArchive(port, folder, bytes, origin, version, maker, here ? network.read : onlyHere);
      const replace = () =>
        backups.alone((make) => store.replaceAll(from, incoming, () => make(store, version)));
      const before = await (withNetwork ? network.replacing(replace) : replace());
      return { jobs, entries, made: head.made, before: before.name, network: withNetwork };
    } catch (error) {
      await removeUnused(port, folder).catch(() => undefined);
      throw error;
    } finally {
      receiving = false;
    }
  };
}

/** Where there is no network to put keys in place for. */
const NO_NETWORK: ReplacedNetwork = { read: onlyHere, replacing: (work) => work() };

function onlyHere(): never {
  throw new ArchiveFault('it holds the network’s keys: put it in place at the shop computer itself');
}

/** What was received and is not to be put in place; what a swap has begun with is left to it. */
async function removeUnused(port: FilePort, folder: string): Promise<void> {
  if (!(await swapBegun(port, folder))) await port.remove(join(folder, INCOMING));
}
