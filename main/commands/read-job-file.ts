import { readFileSync } from 'node:fs';
import { type Fault, faultOf, type FaultId } from '#core/fields/fault.ts';
import type { Job } from '#core/job/job.ts';
import { readJob } from '#core/job/read-job.ts';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { endWith } from './end-with.ts';

const MOST_BYTES = 8 * 1024 * 1024;
/** Refuses bytes that are no UTF-8, and leaves out a byte order mark. */
const UTF8 = new TextDecoder('utf-8', { fatal: true });

export type ReadFile =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly faults: readonly Fault[] };

/** Reads a JSON file of at most 8 MiB; anything wrong is a fault with the file's name as its path. */
export function readJsonFile(path: string): ReadFile {
  const refuse = (id: FaultId, error?: unknown): ReadFile => {
    const reason = error instanceof Error ? error.message : String(error);
    return { ok: false, faults: [faultOf(path, id, { reason: { typed: reason } })] };
  };
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    return refuse('unreadable', error);
  }
  if (bytes.length > MOST_BYTES) return refuse('too-large');
  let text: string;
  try {
    text = UTF8.decode(bytes);
  } catch {
    return refuse('not-utf8');
  }
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    return refuse('not-json', error);
  }
}

/** The job of a file. Ends with exit code 2 where it is faulty. */
export function jobFrom(path: string): Job {
  const file = readJsonFile(path);
  if (!file.ok) endWithFaults(file.faults);
  const job = readJob(file.value);
  if (!job.ok) endWithFaults(job.faults);
  return job.value;
}

/** Prints faults in English, a line each, on stderr and ends with exit code 2. */
export function endWithFaults(faults: readonly Fault[]): never {
  const lines = speakFaults(faults, 'en').map(({ path, message }) => `${path}: ${message}`);
  return endWith(2, lines.join('\n'));
}
