import { constants } from 'node:fs';
import { type FileHandle, mkdir, open, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';

/** A file that only grows. Nothing counts as written before `flush` has returned. */
export interface GrowingFile {
  append(text: string): Promise<void>;
  flush(): Promise<void>;
  truncate(bytes: number): Promise<void>;
  close(): Promise<void>;
}

/** Everything the store asks of the file system: one small port, so that every fault can be tried on it. */
export interface FilePort {
  makeFolder(path: string): Promise<void>;
  list(folder: string): Promise<string[]>;
  /** Null when there is no such file. */
  read(path: string): Promise<Buffer | null>;
  size(path: string): Promise<number>;
  /** The whole text under this name, or the old one: temporary file, flush, rename, flush of the folder. */
  replace(path: string, text: string): Promise<void>;
  remove(path: string): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  grow(path: string): Promise<GrowingFile>;
}

/** The real disk. */
export const disk: FilePort = {
  async makeFolder(path) {
    await mkdir(path, { recursive: true, mode: 0o700 });
  },
  async list(folder) {
    return (await readdir(folder)).sort();
  },
  async read(path) {
    try {
      return await readFile(path);
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return null;
      throw error;
    }
  },
  async size(path) {
    return (await stat(path)).size;
  },
  async replace(path, text) {
    const temporary = join(dirname(path), `.${basename(path)}.new`);
    const file = await open(temporary, 'w', 0o600);
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(temporary, path);
    await flushFolder(dirname(path));
  },
  async remove(path) {
    await rm(path, { force: true });
    await flushFolder(dirname(path));
  },
  async rename(from, to) {
    await rename(from, to);
    await flushFolder(dirname(to));
  },
  async grow(path) {
    const file = await open(path, constants.O_WRONLY | constants.O_APPEND | constants.O_CREAT, 0o600);
    await flushFolder(dirname(path));
    return growing(file);
  },
};

function growing(file: FileHandle): GrowingFile {
  return {
    async append(text) {
      const bytes = Buffer.from(text);
      for (let written = 0; written < bytes.length;) {
        const step = await file.write(bytes, written, bytes.length - written);
        if (step.bytesWritten === 0) throw new Error('nothing could be written');
        written += step.bytesWritten;
      }
    },
    flush: () => file.datasync(),
    truncate: (bytes) => file.truncate(bytes),
    close: () => file.close(),
  };
}

async function flushFolder(path: string): Promise<void> {
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

/** The system's code of an error ("ENOENT"), or nothing. */
export function codeOf(error: unknown): string | undefined {
  return typeof error === 'object' && error !== null && 'code' in error && typeof error.code === 'string'
    ? error.code
    : undefined;
}
