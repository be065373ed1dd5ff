import { readFileSync } from 'node:fs';
import type { Fault } from '#core/fields/fault.ts';
import { endWith } from './end-with.ts';

const MOST_BYTES = 8 * 1024 * 1024;
/** Refuses bytes that are no UTF-8, and leaves out a byte order mark. */
const UTF8 = new TextDecoder('utf-8', { fatal: true });

export type ReadFile =
  { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly faults: readonly Fault[] };

/** Reads a JSON file of at most 8 MiB; anything wrong is a fault with the file's name as its path. */
export function readJsonFile(path: string): ReadFile {
  const refuse = (code: string, message: string): ReadFile => ({
    ok: false,
    faults: [{ path, code, message }],
  });
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    return refuse('unreadable', `cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  if (bytes.length > MOST_BYTES) return refuse('too-large', 'a job file has at most 8 MiB');
  let text: string;
  try {
    text = UTF8.decode(bytes);
  } catch {
    return refuse('not-utf8', 'is no UTF-8 text: save it as UTF-8');
  }
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    return refuse('not-json', `is no JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** Prints faults a line each on stderr and ends with exit code 2. */
export function endWithFaults(faults: readonly Fault[]): never {
  return endWith(2, faults.map(({ path, message }) => `${path}: ${message}`).join('\n'));
}
