import { join } from 'node:path';
import { archiveLines } from './archive-lines.ts';
import { codeOf, type FilePort, writeAll } from '../files/file-port.ts';
import { pack, slices, unpack } from '../files/packed.ts';
import { type ArchiveRead, readArchive } from './read-archive.ts';
import type { Store } from '../store.ts';
import { Turns } from '../files/turns.ts';

/** A copy of everything, as it lies in the folder of backups. */
export interface Backup {
  readonly name: string;
  readonly at: string;
  readonly bytes: number;
}

/** One just made, with what reading it back found. */
export type MadeBackup = Backup & Pick<ArchiveRead, 'jobs' | 'entries'>;

/** The name of a backup's file: when it was made. */
export const BACKUP_NAME = /^(\d{4}-\d\d-\d\dT)(\d\d)-(\d\d)-(\d\d)-(\d{3})Z\.json\.gz$/;

/** The backups: made while the hub runs, read back before they count, the oldest given up. */
export class Backups {
  readonly #port: FilePort;
  readonly folder: string;
  readonly #turns = new Turns();

  constructor(port: FilePort, dataFolder: string) {
    this.#port = port;
    this.folder = join(dataFolder, 'backups');
  }

  /** The newest first; none where there is no folder of them. */
  async list(): Promise<Backup[]> {
    return backupsNamed(this.#port, this.folder, await this.#names());
  }

  /** Makes one of this moment, reads it back, and then gives up all but the newest `keep`. One at a time. */
  make(store: Store, version: string, keep: number): Promise<MadeBackup> {
    return this.#turns.take(() => this.#make(store, version, keep));
  }

  /** Does a work that no other backup may run beside: it may make some, none of which is given up for them. */
  alone<T>(work: (make: (store: Store, version: string) => Promise<MadeBackup>) => Promise<T>): Promise<T> {
    return this.#turns.take(() =>
      work((store, version) => this.#make(store, version, Number.POSITIVE_INFINITY)),
    );
  }

  async #make(store: Store, version: string, keep: number): Promise<MadeBackup> {
    await store.jobs.ready();
    const lines = archiveLines(store, version);
    const at = new Date().toISOString();
    await this.#port.makeFolder(this.folder);
    const name = `${at.replace(/[:.]/g, '-')}.json.gz`;
    const draft = join(this.folder, '.draft');
    await this.#write(draft, lines);
    const { jobs, entries } = await readArchive(this.#unpacked(draft), UNREAD, 'own');
    await this.#port.rename(draft, join(this.folder, name));
    await this.#port.flushFolder(this.folder);
    const kept = await this.list();
    for (const old of kept.filter((each) => each.name !== name).slice(Math.max(0, keep - 1)))
      await this.#port.remove(join(this.folder, old.name));
    return { name, at, bytes: kept.find((each) => each.name === name)?.bytes ?? 0, jobs, entries };
  }

  /** The bytes of an archive as it was before it was packed; null when there is no backup of this name. */
  async open(name: string): Promise<AsyncIterable<Buffer> | null> {
    const known = (await this.list()).find((each) => each.name === name);
    return known === undefined ? null : this.#unpacked(join(this.folder, known.name));
  }

  async #names(): Promise<string[]> {
    try {
      return await this.#port.list(this.folder);
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return [];
      throw error;
    }
  }

  async #write(path: string, lines: AsyncIterable<string>): Promise<void> {
    const file = await this.#port.create(path);
    try {
      for await (const bytes of pack(lines)) await writeAll(file, bytes);
      await file.flush();
    } finally {
      await file.close();
    }
  }

  #unpacked(path: string): AsyncIterable<Buffer> {
    return unpack(slices(this.#port, path));
  }
}

const NOTHING = () => Promise.resolve();
/** The backups among the files of a folder, the newest first. */
export function backupsNamed(
  port: Pick<FilePort, 'size'>,
  folder: string,
  names: readonly string[],
): Promise<Backup[]> {
  return Promise.all(
    names
      .filter((name) => BACKUP_NAME.test(name))
      .sort()
      .reverse()
      .map(async (name) => ({
        name,
        at: name.replace(BACKUP_NAME, '$1$2:$3:$4.$5Z'),
        bytes: (await port.size(join(folder, name))) ?? 0,
      })),
  );
}

/** Reads an archive through and keeps nothing of it. */
const UNREAD = {
  shop: NOTHING,
  network: NOTHING,
  job: NOTHING,
  past: NOTHING,
  plan: NOTHING,
  entry: NOTHING,
};
