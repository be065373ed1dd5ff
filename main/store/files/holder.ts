import { join } from 'node:path';
import type { FilePort } from './file-port.ts';

/**
 * Who holds a data folder: a process is told by its number, when it started, the boot and the pid namespace it runs in;
 * whatever those are worth, the token is its own. Locks of older versions say neither namespace, token nor machine.
 */
export interface Holder {
  readonly pid: number;
  readonly started: string;
  readonly boot: string;
  readonly space: string;
  readonly token: string;
  /** The name of its machine, for people. */
  readonly host: string;
}

/** A lock as it lies there. A beat of its holder's heart is a blank behind the text, so it reads as JSON all the same. */
export interface FoundLock {
  readonly number: number;
  readonly path: string;
  readonly bytes: Buffer;
  /** Null when it cannot be read. */
  readonly holder: Holder | null;
}

export const UNREADABLE: Holder = {
  pid: 0,
  started: 'unreadable',
  boot: 'unreadable',
  space: '',
  token: '',
  host: '',
};

/** The path of a folder's lock of this number. */
export function lockPath(folder: string, number: number): string {
  return join(folder, `lock-${number}.json`);
}

/** The locks that lie in a folder, the highest number last; one that goes while they are read is passed over. */
export async function readLocks(port: FilePort, folder: string): Promise<FoundLock[]> {
  const numbers = (await port.list(folder))
    .map((name) => /^lock-(\d{1,15})\.json$/.exec(name)?.[1])
    .filter((found) => found !== undefined)
    .map(Number)
    .sort((a, b) => a - b);
  const found = await Promise.all(
    numbers.map(async (number) => {
      const path = lockPath(folder, number);
      const bytes = await port.read(path);
      return bytes === null ? null : { number, path, bytes, holder: readHolder(bytes) };
    }),
  );
  return found.filter((each) => each !== null);
}

function readHolder(bytes: Buffer): Holder | null {
  try {
    const read: unknown = JSON.parse(bytes.toString('utf8'));
    if (typeof read !== 'object' || read === null) return null;
    const { pid, started, boot, space, token, host } = read as Partial<Record<keyof Holder, unknown>>;
    return typeof pid === 'number' && typeof started === 'string' && typeof boot === 'string'
      ? { pid, started, boot, space: textOf(space), token: textOf(token), host: textOf(host) }
      : null;
  } catch {
    return null;
  }
}

function textOf(value: unknown): string {
  return typeof value === 'string' ? value : '';
}
