import { crc32 } from 'node:zlib';
import type { JobDocument } from './job-document.ts';
import { writeLine } from './log-line.ts';
import type { ShopDocument } from './shop-store.ts';
import type { Store } from './store.ts';

/** The newest form of an archive that this version knows. */
export const ARCHIVE_FORMAT = 1;

/** What an archive says of itself in its first line. */
export interface ArchiveHead {
  readonly archive: number;
  readonly version: string;
  readonly made: string;
  readonly seq: number;
}

/** What stands on an archive's other lines, but for the log's, which stand as they do there. */
export type ArchiveDocument =
  | { readonly shop: ShopDocument }
  | { readonly job: JobDocument }
  | { readonly end: { readonly jobs: number; readonly entries: number; readonly sum: number } };

/**
 * Everything in one text: a JSON list with an item a line. Shop, jobs and log are those of one moment, whatever happens
 * while it is read. PIN, sessions and lock are not in it.
 */
export function archiveLines(store: Store, version: string): AsyncGenerator<string> {
  const shop = store.shop.document;
  const jobs = store.jobs.all().map(({ document }) => document);
  const head: ArchiveHead = {
    archive: ARCHIVE_FORMAT,
    version,
    made: new Date().toISOString(),
    seq: store.lastSeq,
  };
  return linesOf(head, shop, jobs, store);
}

async function* linesOf(
  head: ArchiveHead,
  shop: ShopDocument,
  jobs: readonly JobDocument[],
  store: Store,
): AsyncGenerator<string> {
  let sum = 0;
  const counted = (line: string) => {
    sum = crc32(line, sum);
    return line;
  };
  const item = (document: ArchiveHead | ArchiveDocument) => counted(`${JSON.stringify(document)},\n`);
  yield counted('[\n');
  yield item(head);
  yield item({ shop });
  for (const job of jobs) yield item({ job });
  let entries = 0;
  for await (const { seq, entry } of store.log.from(0)) {
    if (seq > head.seq) break;
    entries += 1;
    yield counted(`${writeLine(seq, entry).slice(0, -1)},\n`);
  }
  yield `${JSON.stringify({ end: { jobs: jobs.length, entries, sum } })}\n]\n`;
}
