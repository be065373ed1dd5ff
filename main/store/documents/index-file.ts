import { crc32 } from 'node:zlib';
import { documentName } from './job-document.ts';
import { type IndexHead, JobIndex, tableBytes } from './job-index.ts';
import type { KeptAs, MadeOf } from './kept-plan.ts';

/** The form of an index's file. It is a cache and nothing else: whatever is wrong with one, it is made anew. */
const INDEX_FORMAT = 1;
/** A checksum of all that follows, and the end of its line. */
const SUM_LENGTH = 9;

interface FileHead {
  readonly index: number;
  readonly of: MadeOf;
  readonly plan: KeptAs;
  readonly head: IndexHead;
}

/** The name of the file that the index of a job's kept plan lies in. */
export function indexName(id: string): string {
  return documentName(id).replace(/\.json$/, '.index');
}

/** An index as its file keeps it, with what it was made of and the kept plan that it points into. */
export function indexFile(of: MadeOf, plan: KeptAs, head: IndexHead, tables: ArrayBuffer): Buffer {
  const first = `${JSON.stringify({ index: INDEX_FORMAT, of, plan, head } satisfies FileHead)}\n`;
  const rest = Buffer.concat([Buffer.from(first), new Uint8Array(tables)]);
  return Buffer.concat([Buffer.from(`${crc32(rest).toString(16).padStart(8, '0')}\n`), rest]);
}

/** What such a file holds, if it is whole and was made of just this; else null. */
export function readIndexFile(
  bytes: Buffer,
  of: MadeOf,
): { readonly index: JobIndex; readonly plan: KeptAs } | null {
  const rest = bytes.subarray(SUM_LENGTH);
  if (bytes.toString('latin1', 0, SUM_LENGTH - 1) !== crc32(rest).toString(16).padStart(8, '0')) return null;
  const end = rest.indexOf(10);
  // Its checksum is right: this program wrote it.
  const read = JSON.parse(rest.toString('utf8', 0, end)) as FileHead;
  if (read.index !== INDEX_FORMAT || read.of.hash !== of.hash || read.of.version !== of.version) return null;
  const tables = new Uint8Array(rest.subarray(end + 1)).buffer;
  if (tables.byteLength !== tableBytes(read.head)) return null;
  return { index: new JobIndex(read.head, tables), plan: read.plan };
}
