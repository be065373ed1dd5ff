import { join } from 'node:path';
import { EntryFold } from './entry-fold.ts';
import { EventLog } from './event-log.ts';
import type { FilePort } from './file-port.ts';
import { JobStore } from './job-store.ts';
import { LOG_FORMAT, type LogEntry } from './log-entry.ts';
import { PrintRecord } from './print-record.ts';
import { ProgressBook } from './progress-book.ts';
import type { ScannedLog } from './read-log.ts';
import { SeenIds } from './seen-ids.ts';
import { ShopStore } from './shop-store.ts';
import { type Folded, readSnapshot } from './snapshot.ts';

/** Everything of a data folder, read and ready. */
export interface OpenFolder {
  readonly jobs: JobStore;
  readonly shop: ShopStore;
  readonly log: EventLog;
  readonly folded: Folded;
  readonly scanned: ScannedLog;
  /** Lines that are whole but say nothing that this version knows. */
  readonly strange: number;
  /** Why the whole log was read; null when a snapshot saved that. */
  readonly noSnapshot: string | null;
}

export const LOG_NAME = 'log.jsonl';
export const JOBS_NAME = 'jobs';
export const SHOP_NAME = 'shop.json';
export const SNAPSHOT_NAME = 'snapshot.bin';

/** Opens a data folder: shop, snapshot, jobs, log. What stands in the log behind the snapshot is folded in. */
export async function openFolder(port: FilePort, folder: string, version: string): Promise<OpenFolder> {
  await port.makeFolder(folder);
  const shop = await ShopStore.open(port, join(folder, SHOP_NAME));
  const logPath = join(folder, LOG_NAME);
  const snapshot = await readSnapshot(port, join(folder, SNAPSHOT_NAME), logPath, version);
  const known = typeof snapshot === 'string' ? null : snapshot;
  const folded: Folded = known?.folded ?? {
    book: new ProgressBook(),
    ids: new SeenIds(),
    prints: new PrintRecord(),
    replacements: new Map(),
    logFormat: 1,
  };
  const jobs = new JobStore(
    port,
    join(folder, JOBS_NAME),
    (units) => shop.profileFor(units),
    (job) => folded.book.job(job),
  );
  await jobs.open(known?.jobs);
  const fold = new EntryFold(folded);
  const { log, scanned } = await EventLog.open(port, logPath, (read) => fold.take(read), known?.start);
  fold.finish();
  if (folded.logFormat < LOG_FORMAT) await sayFormat(log, folded, version);
  return {
    jobs,
    shop,
    log,
    folded,
    scanned,
    strange: fold.strange,
    noSnapshot: typeof snapshot === 'string' ? snapshot : null,
  };
}

/** From here on the log's entries are of today's form. */
function sayFormat(log: EventLog, folded: Folded, version: string): Promise<void> {
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
