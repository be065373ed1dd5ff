import { constants, statSync, writeSync } from 'node:fs';
import {
  copyFile,
  type FileHandle,
  link,
  mkdir,
  open,
  readdir,
  readFile,
  rename,
  rm,
  stat,
  statfs,
} from 'node:fs/promises';
import { dirname } from 'node:path';
import { codeOf, type FilePort, type GrowingFile } from './file-port.ts';

/** The real disk. Files and folders are the user's own (0600, 0700). */
export const disk: FilePort = {
  async makeFolder(path) {
    await mkdir(path, { recursive: true, mode: 0o700 });
  },
  async list(folder) {
    return (await readdir(folder)).sort();
  },
  read: (path) => unlessMissing(readFile(path)),
  async size(path) {
    return (await unlessMissing(stat(path)))?.size ?? null;
  },
  async slice(path, from, to) {
    const file = await open(path, 'r');
    try {
      const bytes = Buffer.allocUnsafe(Math.max(0, to - from));
      let filled = 0;
      while (filled < bytes.length) {
        const { bytesRead } = await file.read(bytes, filled, bytes.length - filled, from + filled);
        if (bytesRead === 0) break;
        filled += bytesRead;
      }
      return bytes.subarray(0, filled);
    } finally {
      await file.close();
    }
  },
  create: async (path) => growing(await open(path, 'w', 0o600), path),
  async grow(path) {
    const file = await open(path, constants.O_WRONLY | constants.O_APPEND | constants.O_CREAT, 0o600);
    await flushFolder(dirname(path));
    return growing(file, path);
  },
  async link(from, to) {
    try {
      await link(from, to);
      return true;
    } catch (error) {
      if (codeOf(error) === 'EEXIST') return false;
      if (!NO_LINKS.has(codeOf(error) ?? '')) throw error;
      return copyUnlessThere(from, to);
    }
  },
  rename,
  async remove(path) {
    await rm(path, { force: true, recursive: true });
  },
  flushFolder,
  async space(folder) {
    const { bavail, blocks, bsize } = await statfs(folder);
    return { free: bavail * bsize, total: blocks * bsize };
  },
};

/** What a disk without links answers: one formatted for cameras, some in the network. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK']);

async function copyUnlessThere(from: string, to: string): Promise<boolean> {
  try {
    await copyFile(from, to, constants.COPYFILE_EXCL);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
}

/** So many bytes go into the system's memory faster than another thread is asked to do it; the flush takes its time. */
const AT_ONCE = 64 * 1024;

async function growing(file: FileHandle, path: string): Promise<GrowingFile> {
  const { ino, dev } = await file.stat({ bigint: true });
  return {
    write: (bytes) =>
      bytes.length <= AT_ONCE
        ? writeSync(file.fd, bytes)
        : file.write(bytes, 0, bytes.length).then(({ bytesWritten }) => bytesWritten),
    flush: () => file.datasync(),
    truncate: (bytes) => file.truncate(bytes),
    inPlace() {
      const now = statSync(path, { bigint: true, throwIfNoEntry: false });
      return now?.ino === ino && now.dev === dev;
    },
    close: () => file.close(),
  };
}

async function flushFolder(path: string): Promise<void> {
  if (process.platform === 'win32') return;
  const folder = await open(path, 'r');
  try {
    await folder.sync();
  } finally {
    await folder.close();
  }
}

async function unlessMissing<T>(asked: Promise<T>): Promise<T | null> {
  try {
    return await asked;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}
