import { join } from 'node:path';
import { renameAside } from './files/aside.ts';
import { copyOlder } from './archive/copy-older.ts';
import { JOBS_NAME, LOG_NAME, SHOP_NAME, SNAPSHOT_NAME } from './files/folder-names.ts';
import { EntryFold } from './folded/entry-fold.ts';
import { EventLog } from './log/event-log.ts';
import type { FilePort } from './files/file-port.ts';
import type { JobMaker } from './documents/job-maker.ts';
import { jobFiles } from './documents/job-files.ts';
import { shopFile } from './documents/shop-file.ts';
import { JobStore } from './documents/job-store.ts';
import type { Journal } from './journal.ts';
import { LOG_FORMAT, type LogEntry } from './log/log-entry.ts';
import { PrintRecord } from './folded/print-record.ts';
import { ProgressBook } from './folded/progress-book.ts';
import type { ReadLine } from './log/log-line.ts';
import type { LogReader, ScannedLog } from './log/read-log.ts';
import { SeenIds } from './folded/seen-ids.ts';
import { ShopStore } from './documents/shop-store.ts';
import { type Folded, type NoSnapshot, readSnapshot } from './folded/snapshot.ts';

/** Everything of a data folder, read and ready. */
export interface OpenFolder {
  readonly jobs: JobStore;
  readonly shop: ShopStore;
  readonly log: EventLog;
  readonly folded: Folded;
  readonly scanned: ScannedLog;
  /** The log's bytes that were not read, because a snapshot knows them. */
  readonly unread: number;
  /** Lines that are whole but say nothing that this version knows. */
  readonly strange: number;
  /** Why the whole log was read; null when a snapshot saved that. */
  readonly noSnapshot: string | null;
  /** Snapshots kept aside, now or at an earlier start, that knew entries which the log had lost. */
  readonly knewMore: readonly string[];
  /** The folder that documents were copied into as they were, before this version wrote them in its form. */
  readonly copied: string | null;
}

const KNEW_MORE = 'knew-more';

/** Opens a data folder: shop, snapshot, jobs, log. What stands in the log behind the snapshot is folded in. `reader` reads it, where that is not done in this thread. */
export async function openFolder(
  port: FilePort,
  folder: string,
  version: string,
  maker: JobMaker,
  reader?: LogReader,
): Promise<OpenFolder> {
  await port.makeFolder(folder);
  const documents = documentsIn(port, folder);
  const shop = await ShopStore.open(documents.shop);
  const logPath = join(folder, LOG_NAME);
  const snapshot = await readSnapshot(port, join(folder, SNAPSHOT_NAME), logPath, version);
  const known = 'because' in snapshot ? null : snapshot;
  const folded: Folded = known?.folded ?? {
    book: new ProgressBook(),
    ids: new SeenIds(),
    prints: new PrintRecord(),
    replacements: new Map(),
    logFormat: 1,
  };
  const jobs = new JobStore(documents.jobs, version, {
    profileFor: (units) => ({ ...shop.profileFor(units) }),
    maker,
    marks: {
      last: () => folded.book.last,
      of: (job, since) => folded.book.marked(job, since),
    },
  });
  const older = (await jobs.read()).map((name) => `${JOBS_NAME}/${name}`);
  const writable = port.barred === undefined;
  const copied = writable ? await copyOlder(port, folder, version, older, shop.older) : null;
  await jobs.settle(writable);
  if (writable && shop.older) await shop.rewrite();
  const fold = new EntryFold(folded);
  const take = (read: ReadLine) => fold.take(read);
  const { log, scanned } = await EventLog.open(port, logPath, take, known?.start, reader);
  fold.finish();
  if (writable && 'because' in snapshot)
    await keepWhatKnewMore(port, join(folder, SNAPSHOT_NAME), snapshot, log, scanned);
  if (writable && folded.logFormat < LOG_FORMAT)
    await sayFormat(log, folded, version).catch(async (error: unknown) => {
      await log.close();
      throw error;
    });
  return {
    jobs,
    shop,
    log,
    folded,
    scanned,
    unread: known?.start.place.bytes ?? 0,
    strange: fold.strange,
    noSnapshot: 'because' in snapshot ? snapshot.because : null,
    copied,
    knewMore: (await port.list(folder)).filter((name) => name.startsWith(`${SNAPSHOT_NAME}.${KNEW_MORE}`)),
  };
}

function documentsIn(port: FilePort, folder: string): Omit<Journal, 'log'> {
  return { jobs: jobFiles(port, join(folder, JOBS_NAME)), shop: shopFile(port, join(folder, SHOP_NAME)) };
}

/**
 * A log that ends before what a good snapshot knew has lost entries: the snapshot is all that is left of them, and is
 * kept for a person to look at. Numbers go on from what it knew.
 */
async function keepWhatKnewMore(
  port: FilePort,
  path: string,
  { knew }: NoSnapshot,
  log: Journal['log'],
  scanned: ScannedLog,
): Promise<void> {
  if (knew === undefined || (scanned.seq >= knew.seq && scanned.bytes >= knew.bytes)) return;
  await renameAside(port, path, KNEW_MORE);
  log.goOnFrom(knew.seq);
}

/** From here on the log's entries are of today's form. */
function sayFormat(log: Journal['log'], folded: Folded, version: string): Promise<void> {
  const entry: LogEntry = {
    kind: 'format',
    format: LOG_FORMAT,
    version,
    at: new Date().toISOString(),
  };
  return new Promise((done, failed) =>
    log.append(entry, {
      onDisk() {
        folded.logFormat = LOG_FORMAT;
        done();
      },
      refused: failed,
    }),
  );
}
