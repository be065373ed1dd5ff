import { setImmediate as pause } from 'node:timers/promises';
import { crc32 } from 'node:zlib';
import { z } from 'zod';
import { printedOnce } from '#core/api/prints-api.ts';
import { renameAside } from '../files/aside.ts';
import { type FilePort, replaceFile, wordsOf } from '../files/file-port.ts';
import { LogIndex } from '../log/log-index.ts';
import type { LogStart } from '../log/event-log.ts';
import type { LogPlace } from '../log/read-log.ts';
import { ProgressBook } from './progress-book.ts';
import { PrintRecord } from './print-record.ts';
import { SeenIds } from './seen-ids.ts';

/** What the log folds into. */
export interface Folded {
  readonly book: ProgressBook;
  readonly ids: SeenIds;
  readonly prints: PrintRecord;
  /** Codes of replacements, and what they belong to. */
  readonly replacements: Map<string, { readonly job: string; readonly door: string }>;
  /** The form of the entries that come next. */
  logFormat: number;
}

/** A snapshot: what the log folds into up to a place. */
export interface Snapshot {
  readonly start: LogStart;
  readonly folded: Folded;
}

const place = z.object({ seq: z.number(), bytes: z.number(), lines: z.number() });
const header = z.object({
  snapshot: z.literal(2),
  version: z.string(),
  place,
  /** The end of the log at that place: a log that does not have it there is another one. */
  tail: z.string(),
  index: z.object({ seqs: z.array(z.number()), bytes: z.array(z.number()) }),
  logFormat: z.number(),
  replacements: z.array(z.tuple([z.string(), z.string(), z.string()])),
  prints: z.record(z.string(), z.record(z.string(), z.array(printedOnce))),
  doorBytes: z.number(),
  tables: z.array(z.number()),
  sum: z.number(),
});
const TAIL = 256;
/** How much is put into text at a stretch before others get their turn. */
const STRETCH_MS = 8;

/**
 * Writes a snapshot of this moment. It is a cache and nothing else: whatever is wrong with one, the log is read
 * instead. Others get their turn while it is made; what is folded meanwhile is not in it.
 */
export async function writeSnapshot(
  port: FilePort,
  path: string,
  log: { readonly path: string; readonly start: LogStart },
  folded: Folded,
  version: string,
): Promise<void> {
  const { place: at } = log.start;
  const index = log.start.index.kept();
  const replacements = [...folded.replacements].map(([code, { job, door }]) => [code, job, door]);
  const prints = folded.prints.kept();
  const tables = folded.ids.kept();
  const { logFormat } = folded;
  const doors = folded.book.kept();
  const pieces: Buffer[] = [];
  let began = performance.now();
  let sum = 0;
  const add = (bytes: Buffer) => {
    pieces.push(bytes);
    sum = crc32(bytes, sum);
  };
  for (const { job, door, progress } of doors) {
    add(Buffer.from(`${JSON.stringify([job, door])}\n`));
    add(Buffer.isBuffer(progress) ? progress : Buffer.from(JSON.stringify(progress)));
    add(NEWLINE);
    if (performance.now() - began < STRETCH_MS) continue;
    await pause();
    began = performance.now();
  }
  const doorBytes = pieces.reduce((bytes, { length }) => bytes + length, 0);
  for (const { words } of tables) {
    add(Buffer.from(words.buffer, words.byteOffset, words.byteLength));
    await pause();
  }
  const tail = await port.slice(log.path, Math.max(0, at.bytes - TAIL), at.bytes);
  const head: z.infer<typeof header> = {
    snapshot: 2,
    version,
    place: { seq: at.seq, bytes: at.bytes, lines: at.lines },
    tail: tail.toString('base64'),
    index,
    logFormat,
    replacements: replacements as [string, string, string][],
    prints,
    doorBytes,
    tables: tables.map(({ filled }) => filled),
    sum,
  };
  await replaceFile(port, path, Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), ...pieces]));
}

const NEWLINE = Buffer.from('\n');

/** Why a log is read from its start, and up to where a good snapshot knew a log that is not this one. */
export interface NoSnapshot {
  readonly because: string;
  readonly knew?: LogPlace;
}

/** The snapshot of this version for this log, or why there is none. One that cannot be read at all is kept aside. */
export async function readSnapshot(
  port: FilePort,
  path: string,
  logPath: string,
  version: string,
): Promise<Snapshot | NoSnapshot> {
  let bytes: Buffer | null;
  try {
    bytes = await port.read(path);
  } catch (error) {
    await renameAside(port, path, 'unreadable').catch(() => undefined);
    return { because: `it cannot be read: ${wordsOf(error)}` };
  }
  if (bytes === null) return { because: 'there is none' };
  const end = bytes.indexOf(10);
  const read = header.safeParse(parse(bytes.subarray(0, Math.max(0, end))));
  if (!read.success) return { because: 'its head cannot be read' };
  const head = read.data;
  const body = bytes.subarray(end + 1);
  if (body.length !== head.doorBytes + head.tables.length * SeenIds.TABLE_BYTES)
    return { because: 'it is cut short' };
  if (crc32(body) !== head.sum) return { because: 'its checksum is wrong' };
  const knew = head.place;
  if (((await port.size(logPath)) ?? 0) < knew.bytes) return { because: 'it knows more than the log', knew };
  const tail = await port.slice(logPath, Math.max(0, knew.bytes - TAIL), knew.bytes);
  if (tail.toString('base64') !== head.tail) return { because: 'it belongs to another log', knew };
  if (head.version !== version) return { because: `version ${head.version} wrote it` };
  const book = new ProgressBook();
  for (let at = 0; at < head.doorBytes;) {
    const middle = body.indexOf(10, at);
    const stop = body.indexOf(10, middle + 1);
    const [job, door] = JSON.parse(body.toString('utf8', at, middle)) as [string, string];
    book.put(job, door, body.subarray(middle + 1, stop));
    at = stop + 1;
  }
  return {
    start: { place: head.place, index: new LogIndex(head.index) },
    folded: {
      book,
      ids: new SeenIds(head.tables.map((filled, k) => ({ filled, words: tableAt(body, head.doorBytes, k) }))),
      prints: new PrintRecord(head.prints),
      replacements: new Map(head.replacements.map(([code, job, door]) => [code, { job, door }])),
      logFormat: head.logFormat,
    },
  };
}

function tableAt(body: Buffer, from: number, k: number): Uint32Array {
  const start = from + k * SeenIds.TABLE_BYTES;
  const copy = new Uint8Array(body.subarray(start, start + SeenIds.TABLE_BYTES));
  return new Uint32Array(copy.buffer);
}

function parse(bytes: Buffer): unknown {
  try {
    return JSON.parse(bytes.toString('utf8'));
  } catch {
    return null;
  }
}
