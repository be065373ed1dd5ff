import { constants, readFileSync, statSync, writeSync } from 'node:fs';
import {
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
import { codeOf, type FilePort, type GrowingFile, StoreTrouble } from './file-port.ts';

/** The real disk. Files and folders are the user's own (0600, 0700). */
export const disk: FilePort = {
  async makeFolder(path) {
    try {
      await mkdir(path, { recursive: true, mode: 0o700 });
    } catch (error) {
      // So Node says too of a disk that is mounted to be read; asked for one folder alone, the system says what it is.
      if (codeOf(error) !== 'ENOENT') throw error;
      await mkdir(path, { mode: 0o700 });
    }
  },
  async list(folder) {
    return (await readdir(folder)).sort();
  },
  read: (path) => unlessMissing(readFile(path)),
  async size(path) {
    return (await unlessMissing(stat(path)))?.size ?? null;
  },
  async modified(path) {
    return (await unlessMissing(stat(path)))?.mtimeMs ?? null;
  },
  peek(path) {
    try {
      return readFileSync(path);
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return null;
      throw error;
    }
  },
  identity(path) {
    const found = statSync(path, { bigint: true, throwIfNoEntry: false });
    return found === undefined ? null : identityOf(found);
  },
  async slice(path, from, to) {
    const file = await open(path, 'r');
    try {
      return await sliceOf(file, from, to);
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
  shared: async (folder) => !OWN_DISKS.has((await statfs(folder)).type),
};

async function sliceOf(file: FileHandle, from: number, to: number): Promise<Buffer> {
  const bytes = Buffer.allocUnsafe(Math.max(0, to - from));
  let filled = 0;
  while (filled < bytes.length) {
    const { bytesRead } = await file.read(bytes, filled, bytes.length - filled, from + filled);
    if (bytesRead === 0) break;
    filled += bytesRead;
  }
  return bytes.subarray(0, filled);
}

/** One file of the real disk, opened once for all that is read of it, whatever name is asked for. */
export async function heldFile(
  path: string,
): Promise<Pick<FilePort, 'size' | 'slice'> & { close(): Promise<void> }> {
  const file = await open(path, 'r');
  return {
    size: async () => (await file.stat()).size,
    slice: (_path, from, to) => sliceOf(file, from, to),
    close: () => file.close(),
  };
}

/**
 * File systems that one machine has to itself, by the numbers that Linux gives them (linux/magic.h, from memory): ext2 to
 * ext4, xfs, btrfs, f2fs, tmpfs, overlay, zfs, and those of sticks, vfat and exfat.
 */
const OWN_DISKS = new Set([
  0xef53, 0x58465342, 0x9123683e, 0xf2f52010, 0x01021994, 0x794c7630, 0x2fc12fc1, 0x4d44, 0x2011bab0,
]);

function identityOf({ dev, ino }: { readonly dev: bigint; readonly ino: bigint }): string {
  return `${dev}:${ino}`;
}

/** What a disk without links answers: one formatted for cameras, some in the network. */
const NO_LINKS = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK']);

/** By hand: the system's own copy gives it the rights of the first one, which a disk without links may not know either. */
async function copyUnlessThere(from: string, to: string): Promise<boolean> {
  const content = await readFile(from);
  let file: FileHandle;
  try {
    file = await open(to, 'wx', 0o600);
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
  try {
    await file.writeFile(content);
  } finally {
    await file.close();
  }
  return true;
}

/** So many bytes go into the system's memory faster than another thread is asked to do it; the flush takes its time. */
const AT_ONCE = 64 * 1024;

async function growing(file: FileHandle, path: string): Promise<GrowingFile> {
  const identity = identityOf(await file.stat({ bigint: true }));
  return {
    identity,
    write: (bytes) =>
      bytes.length <= AT_ONCE
        ? writeSync(file.fd, bytes)
        : file.write(bytes, 0, bytes.length).then(({ bytesWritten }) => bytesWritten),
    flush: () => file.datasync(),
    truncate: (bytes) => file.truncate(bytes),
    displaced(bytes) {
      const now = statSync(path, { bigint: true, throwIfNoEntry: false });
      if (now === undefined || identityOf(now) !== identity)
        return Promise.resolve(new StoreTrouble('the log was moved or removed'));
      return now.size === BigInt(bytes)
        ? null
        : Promise.resolve(
            new StoreTrouble(`the log is ${now.size} bytes long and not ${bytes}: somebody else wrote it`),
          );
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
