import { crc32 } from 'node:zlib';
import type { JobDocument } from '../documents/job-document.ts';
import { writeLine } from '../log/log-line.ts';
import { packedLines } from '../documents/kept-plan.ts';
import type { PlanLine } from '../documents/plan-lines.ts';
import type { ShopDocument } from '../documents/shop-document.ts';
import type { Answered, Entries } from '../journal.ts';
import type { Store } from '../store.ts';
import type { NetworkPart } from './network-part.ts';
import type { StoredJob } from '../documents/stored-job.ts';

/** The newest form of an archive that this version knows: one with the network's keys in it. */
export const ARCHIVE_FORMAT = 5;
/** The form of any other. */
const WITHOUT_NETWORK = 4;

/** What an archive says of itself in its first line. */
export interface ArchiveHead {
  readonly archive: number;
  readonly version: string;
  readonly made: string;
  /** The number of the last entry that it holds. */
  readonly seq: number;
}

/** What stands on an archive's other lines, but for the log's, which stand as they do there. */
export type ArchiveDocument =
  | { readonly shop: ShopDocument }
  /** Behind the shop stands its network, where it was asked for; it came with format 5. */
  | { readonly network: NetworkPart }
  | { readonly job: JobDocument }
  /** Behind a job stand its earlier revisions; they came with format 4. */
  | { readonly past: JobDocument }
  /** Behind a job that has faults stands its last plan; it came with format 3. */
  | PlanLine
  | {
      /** `last` is the number of the last entry once more, as it was met; it came with format 2. */
      readonly end: {
        readonly jobs: number;
        readonly entries: number;
        readonly last: number;
        readonly sum: number;
      };
    };

/**
 * Everything in one text: a JSON list with an item a line. Shop, jobs and log are those of one moment, whatever happens
 * while it is read: it comes whole or ends in a StoreTrouble or StoreBusy, without its last line. PIN, sessions and lock
 * are not in it, and the network's keys only where they are given.
 */
export function archiveLines(
  store: Store,
  version: string,
  network: NetworkPart | null = null,
): AsyncGenerator<string> {
  const { log } = store;
  return linesOf(
    {
      archive: network === null ? WITHOUT_NETWORK : ARCHIVE_FORMAT,
      version,
      made: new Date().toISOString(),
    },
    store.shop.document,
    network,
    [...store.jobs.all(), ...store.jobs.bin()],
    (job) => store.jobs.pastOf(job),
    log,
    log.answered,
  );
}

async function* linesOf<Moment extends Answered>(
  about: Omit<ArchiveHead, 'seq'>,
  shop: ShopDocument,
  network: NetworkPart | null,
  jobs: readonly StoredJob[],
  pastOf: (job: StoredJob) => AsyncIterable<JobDocument>,
  log: Pick<Entries<Moment>, 'from' | 'lastEntry'>,
  upTo: Moment,
): AsyncGenerator<string> {
  const head: ArchiveHead = { ...about, seq: await log.lastEntry(upTo) };
  let sum = 0;
  const counted = (line: string) => {
    sum = crc32(line, sum);
    return line;
  };
  const item = (document: ArchiveHead | ArchiveDocument) => counted(`${JSON.stringify(document)},\n`);
  yield counted('[\n');
  yield item(head);
  yield item({ shop });
  if (network !== null) yield item({ network });
  for (const job of jobs) {
    yield item({ job: job.document });
    for await (const past of pastOf(job)) yield item({ past });
    if (job.faults.length > 0 && job.summary.doors > 0 && job.lines !== null)
      for await (const line of packedLines(job.lines)) yield counted(`${line},\n`);
  }
  let [entries, last] = [0, 0];
  for await (const { seq, entry } of log.from(0, upTo)) {
    entries += 1;
    last = seq;
    yield counted(`${writeLine(seq, entry).slice(0, -1)},\n`);
  }
  const end: ArchiveDocument = { end: { jobs: jobs.length, entries, last, sum } };
  yield `${JSON.stringify(end)}\n]\n`;
}
