import { basename, dirname, join } from 'node:path';

/** A file that only grows. Nothing counts as written before `flush` has returned. */
export interface GrowingFile {
  /** Writes what it can of these bytes at the end, and says how many that were. */
  write(bytes: Uint8Array): number | Promise<number>;
  flush(): Promise<void>;
  truncate(bytes: number): Promise<void>;
  /** Is it still this file that stands under its name? Not when its folder was moved, removed or unmounted. */
  inPlace(): boolean;
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
  const folder = dirname(path);
  const temporary = join(folder, `.${basename(path)}.new`);
  const file = await port.create(temporary);
  try {
    await writeAll(file, typeof content === 'string' ? Buffer.from(content) : content);
    await file.flush();
  } finally {
    await file.close();
  }
  await port.rename(temporary, path);
  await port.flushFolder(folder);
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

/** An error's own words. */
export function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
