import { dirname } from 'node:path';
import { z } from 'zod';
import type { Plan } from '#core/plan/plan.ts';
import { codeOf, draftOf, type FilePort, writeAll } from '../files/file-port.ts';
import { documentName } from './job-document.ts';
import { pack, slices, unpack } from '../files/packed.ts';
import { linesOfPlan, planLine, type PlanLine, planOfLines } from './plan-lines.ts';

/** The form of a kept plan's file. One in another form is as good as none. */
const KEPT_FORMAT = 1;
const MOST_HEAD = 400;

/** What a kept plan was made of, and by which version: what was made of the same by the same need not be made again. */
export interface MadeOf {
  /** The document as it lay on disk then. */
  readonly hash: string;
  readonly version: string;
}

const head = z.object({ kept: z.literal(KEPT_FORMAT), hash: z.string(), version: z.string() });

/** The name of the file that a job's last plan lies in, beside its document. */
export function keptPlanName(id: string): string {
  return documentName(id).replace(/\.json$/, '.plan');
}

/**
 * Writes the plan of a job beside its document, whole or not at all: a line that says what it was made of, then the rest
 * packed. A later version that refuses to plan the job still shows this one.
 */
export function keepPlan(port: FilePort, path: string, madeOf: MadeOf, plan: Plan): Promise<void> {
  return keepTexts(port, path, madeOf, texts(linesOfPlan(plan)));
}

/** The same from the text of its lines. */
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

/** What a kept plan was made of; null where there is none, or none that can be read. */
export async function keptOf(
  port: FilePort,
  path: string,
): Promise<(MadeOf & { readonly bytes: number }) | null> {
  const bytes = await port.slice(path, 0, MOST_HEAD).catch((error: unknown) => {
    if (codeOf(error) === 'ENOENT') return Buffer.alloc(0);
    throw error;
  });
  const end = bytes.indexOf(10);
  if (end < 0) return null;
  const read = head.safeParse(parsed(bytes.toString('utf8', 0, end)));
  if (!read.success) return null;
  return { hash: read.data.hash, version: read.data.version, bytes: end + 1 };
}

/** The kept plan of the job of this id; null where there is none, or none that can be read. */
export async function readKeptPlan(port: FilePort, path: string, id: string): Promise<Plan | null> {
  const made = await keptOf(port, path);
  if (made === null) return null;
  try {
    const pieces: Buffer[] = [];
    for await (const piece of unpack(slices(port, path, made.bytes))) pieces.push(piece);
    const lines = Buffer.concat(pieces).toString('utf8').split('\n');
    return planOfLines(
      id,
      lines.filter((line) => line !== '').map((line) => planLine.parse(JSON.parse(line))),
    );
  } catch {
    return null;
  }
}

function* texts(lines: Iterable<PlanLine>): Generator<string> {
  for (const line of lines) yield `${JSON.stringify(line)}\n`;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
