import { dirname } from 'node:path';
import { crc32, gunzipSync } from 'node:zlib';
import { z } from 'zod';
import type { Plan } from '#core/plan/plan.ts';
import { codeOf, draftOf, type FilePort, replaceFile, writeAll } from '../files/file-port.ts';
import { pack, slices, unpack } from '../files/packed.ts';
import { documentName } from './job-document.ts';
import { planLine, planOfLines } from './plan-lines.ts';

/** The form of a kept plan's file. One in another form is as good as none. */
const KEPT_FORMAT = 1;
const MOST_HEAD = 400;

/** What a kept plan was made of, and by which version: what was made of the same by the same need not be made again. */
export interface MadeOf {
  /** The document as it lay on disk then. */
  readonly hash: string;
  readonly version: string;
}

/** The file of a kept plan as it was written: what its index knows it again by. */
export interface KeptAs {
  /** How long its first line is, and all of it, in bytes. */
  readonly head: number;
  readonly bytes: number;
  /** A checksum of all of it. */
  readonly sum: number;
}

const head = z.object({ kept: z.literal(KEPT_FORMAT), hash: z.string(), version: z.string() });

/** The name of the file that a job's last plan lies in, beside its document. */
export function keptPlanName(id: string): string {
  return documentName(id).replace(/\.json$/, '.plan');
}

/**
 * Writes the packed lines of a job's plan beside its document, whole or not at all, behind a line that says what it was made
 * of. A later version that refuses to plan the job still shows this one.
 */
export async function keepPlan(
  port: FilePort,
  path: string,
  { hash, version }: MadeOf,
  lines: Uint8Array,
): Promise<KeptAs> {
  const first = Buffer.from(`${JSON.stringify({ kept: KEPT_FORMAT, hash, version })}\n`);
  await replaceFile(port, path, Buffer.concat([first, lines]));
  const bytes = first.length + lines.length;
  return { head: first.length, bytes, sum: crc32(lines, crc32(first)) };
}

/** The same from the text of its lines, as they come. */
export async function keepTexts(
  port: FilePort,
  path: string,
  { hash, version }: MadeOf,
  lines: AsyncIterable<Buffer | string> | Iterable<string>,
): Promise<void> {
  const temporary = draftOf(port, path);
  const file = await port.create(temporary);
  try {
    await writeAll(file, Buffer.from(`${JSON.stringify({ kept: KEPT_FORMAT, hash, version })}\n`));
    for await (const bytes of pack(lines)) await writeAll(file, bytes);
    await file.flush();
  } finally {
    await file.close();
  }
  await port.rename(temporary, path);
  await port.flushFolder(dirname(path));
}

/** Does the file of a kept plan lie there as it was written? */
export async function isAsKept(port: FilePort, path: string, { bytes, sum }: KeptAs): Promise<boolean> {
  if ((await port.size(path)) !== bytes) return false;
  let found = 0;
  for await (const piece of slices(port, path)) {
    found = crc32(piece, found);
    await new Promise((turn) => setImmediate(turn));
  }
  return found === sum;
}

/** What the plan that lies there says that it was made of, and where its lines begin; null where there is none, or none whose first line can be read. */
async function readHead(
  port: FilePort,
  path: string,
): Promise<{ readonly madeOf: MadeOf; readonly lines: number } | null> {
  const start = await port.slice(path, 0, MOST_HEAD).catch((error: unknown) => {
    if (codeOf(error) === 'ENOENT') return Buffer.alloc(0);
    throw error;
  });
  const end = start.indexOf(10);
  const read = end < 0 ? null : head.safeParse(parsed(start.toString('utf8', 0, end)));
  return read?.success === true ? { madeOf: read.data, lines: end + 1 } : null;
}

/** Was the plan that lies there made of something else, or by another version? False where nothing can be read of it: that is damage. */
export async function isOfAnother(port: FilePort, path: string, { hash, version }: MadeOf): Promise<boolean> {
  const found = await readHead(port, path);
  return found !== null && (found.madeOf.hash !== hash || found.madeOf.version !== version);
}

/** The packed lines of a kept plan; null where there is none. One whose first line cannot be read has none: it is damaged. */
export async function readKeptLines(port: FilePort, path: string): Promise<Uint8Array | null> {
  const found = await readHead(port, path);
  if (found === null) return (await port.size(path)) === null ? null : new Uint8Array();
  const pieces: Buffer[] = [];
  for await (const piece of slices(port, path, found.lines)) pieces.push(piece);
  return new Uint8Array(Buffer.concat(pieces));
}

/** The plan of the job of this id from its packed lines; null where they are not whole. */
export function unpackedPlan(id: string, packed: Uint8Array): Plan | null {
  try {
    return planOfLines(
      id,
      gunzipSync(packed)
        .toString('utf8')
        .split('\n')
        .filter((line) => line !== '')
        .map((line) => planLine.parse(JSON.parse(line))),
    );
  } catch {
    return null;
  }
}

/** The texts of packed lines, one after another. Throws where they are damaged. */
export async function* packedLines(packed: Uint8Array): AsyncGenerator<string> {
  let rest: Buffer[] = [];
  for await (const piece of unpack(inSlices(packed))) {
    let from = 0;
    for (let end = piece.indexOf(10); end >= 0; end = piece.indexOf(10, from)) {
      rest.push(piece.subarray(from, end));
      const line = Buffer.concat(rest).toString('utf8');
      rest = [];
      from = end + 1;
      if (line !== '') yield line;
    }
    rest.push(piece.subarray(from));
  }
  const last = Buffer.concat(rest).toString('utf8');
  if (last !== '') yield last;
}

const SLICE = 64 * 1024;

async function* inSlices(bytes: Uint8Array): AsyncGenerator<Buffer> {
  for (let at = 0; at < bytes.length; at += SLICE)
    yield Buffer.from(bytes.buffer, bytes.byteOffset + at, Math.min(SLICE, bytes.length - at));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
