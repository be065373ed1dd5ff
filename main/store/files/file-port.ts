import { basename, dirname, join } from 'node:path';

/** A file that only grows. Nothing counts as written before `flush` has returned. */
export interface GrowingFile {
  /** Writes what it can of these bytes at the end, and says how many that were. */
  write(bytes: Uint8Array): number | Promise<number>;
  flush(): Promise<void>;
  truncate(bytes: number): Promise<void>;
  /** Which file it is, whatever its name: device and number. */
  readonly identity: string;
  /**
   * Null while this very file stands under its name, so many bytes long, and may be written by this process; else what
   * happened: its folder was moved, removed or unmounted, or somebody else writes.
   */
  displaced(bytes: number): Promise<StoreTrouble> | null;
  close(): Promise<void>;
}

/** Everything the store asks of the file system: one small port, so that every fault can be tried on it. */
export interface FilePort {
  makeFolder(path: string): Promise<void>;
  /** The names in a folder, sorted. */
  list(folder: string): Promise<string[]>;
  /** Null when there is no such file. */
  read(path: string): Promise<Buffer | null>;
  /** Bytes, or null when there is no such file. */
  size(path: string): Promise<number | null>;
  /** When it was last written by the clock of its file system, in ms; null when there is no such file. */
  modified(path: string): Promise<number | null>;
  /** What stands in a small file, at once: between two steps of a program nothing else happens. Null when there is none. */
  peek(path: string): Buffer | null;
  /** Which file or folder stands under this name, at once: device and number. Null when there is none. */
  identity(path: string): string | null;
  /** The bytes from one place up to another, fewer where the file ends before. */
  slice(path: string, from: number, to: number): Promise<Buffer>;
  /** An empty file under this name, whatever stood there. */
  create(path: string): Promise<GrowingFile>;
  /** The file under this name, to be added to; made when there is none. */
  grow(path: string): Promise<GrowingFile>;
  /** A second name for a file; false when that name is taken. */
  link(from: string, to: string): Promise<boolean>;
  rename(from: string, to: string): Promise<void>;
  /** Removes a file, or a folder with all in it; nothing happens when there is none. */
  remove(path: string): Promise<void>;
  flushFolder(path: string): Promise<void>;
  /** Bytes free and in all on the disk that holds this folder. */
  space(folder: string): Promise<{ readonly free: number; readonly total: number }>;
  /** May other machines see this folder too? Then what they are to see must be flushed. */
  shared(folder: string): Promise<boolean>;
  /** The folder in which files are made before they get their name, where that is not the one that they go to. */
  readonly drafts?: string;
  /** Why nothing can be written at all; then whatever would change anything is refused with it. */
  readonly barred?: StoreTrouble;
}

/** Where a file is made that is to stand under this name once it is whole. */
export function draftOf(port: FilePort, path: string): string {
  return join(port.drafts ?? dirname(path), `.${basename(path)}.new`);
}

/** Writes all of the bytes, whatever number of writes that takes. */
export async function writeAll(file: GrowingFile, bytes: Uint8Array): Promise<void> {
  for (let written = 0; written < bytes.length;) {
    const step = await file.write(bytes.subarray(written));
    if (step === 0) throw new StoreTrouble('nothing could be written');
    written += step;
  }
}

/** The whole text under this name, or the old one: temporary file, flush, rename, flush of the folder. */
export async function replaceFile(port: FilePort, path: string, content: string | Uint8Array): Promise<void> {
  const temporary = draftOf(port, path);
  const file = await port.create(temporary);
  try {
    await writeAll(file, typeof content === 'string' ? Buffer.from(content) : content);
    await file.flush();
  } finally {
    await file.close();
  }
  await port.rename(temporary, path);
  await port.flushFolder(dirname(path));
}

/** Something could not be written down or read back. Its message is for a person. */
export class StoreTrouble extends Error {
  constructor(reason: string, cause?: unknown) {
    super(reason, { cause });
  }
}

/** Nothing is written just now, and why. */
export class StoreBusy extends Error {}

/** The system's code of an error ("ENOENT"), or nothing. */
export function codeOf(error: unknown): string | undefined {
  return typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string'
    ? error.code
    : undefined;
}

/** What a disk answers that is full, or not to be written on. */
const NO_ROOM = new Set('ENOSPC EDQUOT EROFS EACCES EPERM'.split(' '));

/** Does this say that nothing can be written here, whatever can be read? */
export function isUnwritable(error: unknown): boolean {
  return (
    NO_ROOM.has(codeOf(error) ?? '') ||
    (error instanceof StoreTrouble && NO_ROOM.has(codeOf(error.cause) ?? ''))
  );
}

/** An error's own words. */
export function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
