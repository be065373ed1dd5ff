import { randomBytes } from 'node:crypto';
import { isAbsolute, join, relative, resolve } from 'node:path';
import { crc32 } from 'node:zlib';
import { z } from 'zod';
import type { Trouble } from '#core/api/office-api.ts';
import { documentText } from '../files/document.ts';
import { type FilePort, replaceFile, StoreTrouble, wordsOf, writeAll } from '../files/file-port.ts';
import { slices, unpack } from '../files/packed.ts';
import { sealed, unsealed } from '../files/seal.ts';
import { type Backup, BACKUP_NAME, type Backups, backupsNamed } from './backups.ts';

/** The file by which a folder is known again: a stick that is not there leaves an empty folder behind, which is not it. */
export const SIGN_NAME = 'shoulderline-backups.json';
const RECORD_NAME = 'elsewhere.json';
const FORMAT = 1;
/** After so long without a backup off the machine that is told. */
const LATE_MS = 14 * 86_400_000;
const LOOK_MS = 60_000;
/** A disk that has not answered one step in this time is taken for gone. */
const STEP_MS = 20_000;

const record = z.object({
  format: z.literal(FORMAT),
  folder: z.string(),
  sign: z.string(),
  /** When it was named, and when the last backup lay there whole; null before the first. */
  since: z.number(),
  last: z.number().nullable(),
});
type Target = Omit<z.infer<typeof record>, 'format'>;

/** Why a folder is not taken for backups, by its code. */
export type NotTaken = 'not-absolute' | 'own-folder' | 'not-there' | 'not-writable';

/** How it stands with the backups off this machine. */
export interface Elsewhere {
  readonly folder: string | null;
  /** Why the last look at it failed; null when it went well. */
  readonly trouble: string | null;
  readonly last: string | null;
}

/** The other disk's files: each step bounded in time, so that one that hangs holds up nobody who waits for it. */
function bounded(port: FilePort, stepMs: number, hung: Set<Promise<unknown>>): FilePort {
  const within = <T>(step: Promise<T>): Promise<T> => {
    hung.add(step);
    const over = () => void hung.delete(step);
    step.then(over, over);
    let timer: ReturnType<typeof setTimeout> | undefined;
    const late = new Promise<never>((_done, failed) => {
      timer = setTimeout(
        () => failed(new StoreTrouble(`it did not answer within ${Math.ceil(stepMs / 1000)} seconds`)),
        stepMs,
      );
      timer.unref();
    });
    return Promise.race([step, late]).finally(() => clearTimeout(timer));
  };
  return {
    ...port,
    list: (folder) => within(port.list(folder)),
    read: (path) => within(port.read(path)),
    size: (path) => within(port.size(path)),
    slice: (path, from, to) => within(port.slice(path, from, to)),
    async create(path) {
      const file = await within(port.create(path));
      return {
        ...file,
        write: (bytes) => within(Promise.resolve(file.write(bytes))),
        flush: () => within(file.flush()),
        close: () => within(file.close()),
      };
    },
    rename: (from, to) => within(port.rename(from, to)),
    remove: (path) => within(port.remove(path)),
    flushFolder: (path) => within(port.flushFolder(path)),
  };
}

/**
 * The backups off this machine: every one that is made is copied into a folder that the office has named, on a stick or
 * another disk. Looked after once a minute; one that is gone, or hangs, holds up neither the start nor any answer.
 */
export class ElsewhereBackups {
  readonly #own: FilePort;
  readonly #data: string;
  readonly #backups: Backups;
  readonly #keep: () => number;
  readonly #now: () => number;
  readonly #there: FilePort;
  /** Steps that were asked for and have not come to their end. While one hangs no other is begun by itself. */
  readonly #hung = new Set<Promise<unknown>>();
  #target: Target | null = null;
  #trouble: string | null = null;
  #looking: Promise<void> | null = null;
  #timer: ReturnType<typeof setInterval> | null = null;

  private constructor(
    own: FilePort,
    there: FilePort,
    data: string,
    backups: Backups,
    keep: () => number,
    { now = Date.now, stepMs = STEP_MS }: { readonly now?: () => number; readonly stepMs?: number },
  ) {
    this.#own = own;
    this.#data = data;
    this.#backups = backups;
    this.#keep = keep;
    this.#now = now;
    this.#there = bounded(there, stepMs, this.#hung);
  }

  /** `own` holds the data folder, `there` is the disk as it is. Reads which folder was named; looks at none. */
  static async open(
    own: FilePort,
    there: FilePort,
    data: string,
    backups: Backups,
    keep: () => number,
    options: { readonly now?: () => number; readonly stepMs?: number } = {},
  ): Promise<ElsewhereBackups> {
    const elsewhere = new ElsewhereBackups(own, there, data, backups, keep, options);
    try {
      const bytes = await own.read(join(data, RECORD_NAME));
      if (bytes !== null) elsewhere.#target = record.parse(JSON.parse(unsealed(bytes.toString('utf8'))));
    } catch (error) {
      elsewhere.#trouble = wordsOf(error).slice(0, 100);
    }
    return elsewhere;
  }

  /** Looks now and then once a minute, for as long as the hub runs. */
  start(lookMs = LOOK_MS): void {
    void this.look();
    this.#timer = setInterval(() => void this.look(), lookMs);
    this.#timer.unref();
  }

  stop(): void {
    if (this.#timer !== null) clearInterval(this.#timer);
  }

  get state(): Elsewhere {
    const last = this.#target?.last ?? null;
    return {
      folder: this.#target?.folder ?? null,
      trouble: this.#trouble,
      last: last === null ? null : new Date(last).toISOString(),
    };
  }

  /** What everybody is told: the folder is not there, or nothing came to lie there for too long. */
  get troubles(): readonly Trouble[] {
    if (this.#target === null) return [];
    const { folder, last, since } = this.#target;
    const days = Math.floor((this.#now() - (last ?? since)) / 86_400_000);
    return [
      ...(this.#trouble === null
        ? []
        : [{ code: 'backup-gone', figures: { folder, reason: this.#trouble } } as const]),
      ...(this.#now() - (last ?? since) > LATE_MS
        ? [{ code: 'backup-late', figures: { folder, count: days } } as const]
        : []),
    ];
  }

  /** Names the folder, or none. What lies there already stays, and can be restored. */
  async name(folder: string | null): Promise<NotTaken | null> {
    if (folder === null) {
      await this.#own.remove(join(this.#data, RECORD_NAME));
      this.#target = null;
      this.#trouble = null;
      return null;
    }
    if (!isAbsolute(folder)) return 'not-absolute';
    const inside = relative(resolve(this.#data), resolve(folder));
    if (inside === '' || (!inside.startsWith('..') && !isAbsolute(inside))) return 'own-folder';
    let sign: string;
    try {
      await this.#there.list(folder);
    } catch {
      return 'not-there';
    }
    try {
      sign = (await this.#signIn(folder)) ?? (await this.#signed(folder));
    } catch {
      return 'not-writable';
    }
    await this.#keepTarget({ folder, sign, since: this.#now(), last: null });
    this.#trouble = null;
    await this.look();
    return null;
  }

  /** The backups that lie there, the newest first; none while it is not there. */
  async list(): Promise<Backup[]> {
    const target = this.#target;
    if (target === null || this.#trouble !== null || this.#hung.size > 0) return [];
    return backupsNamed(this.#there, target.folder, await this.#there.list(target.folder)).catch(() => []);
  }

  /** The bytes of one of them as it was before it was packed; null where there is none of this name. */
  async open(name: string): Promise<AsyncIterable<Buffer> | null> {
    const known = (await this.list().catch(() => [])).find((each) => each.name === name);
    if (known === undefined || this.#target === null) return null;
    return unpack(slices(this.#there, join(this.#target.folder, known.name)));
  }

  /** Looks whether the folder is there, and copies what is not there yet. One look at a time; never rejects. */
  look(): Promise<void> {
    this.#looking ??= this.#look()
      .then(
        () => (this.#trouble = null),
        (error: unknown) => (this.#trouble = wordsOf(error).slice(0, 160)),
      )
      .then(() => undefined)
      .finally(() => (this.#looking = null));
    return this.#looking;
  }

  async #look(): Promise<void> {
    const target = this.#target;
    if (target === null) return;
    if (this.#hung.size > 0) throw new StoreTrouble('it does not answer');
    const { folder, sign } = target;
    if ((await this.#signIn(folder)) !== sign) throw new StoreTrouble('the folder or stick is not there');
    const names = new Set(await this.#there.list(folder));
    const own = (await this.#backups.list()).slice(0, this.#keep());
    for (const { name } of own.toReversed()) {
      if (!names.has(name)) await this.#copy(folder, name);
      const made = Date.parse(own.find((each) => each.name === name)?.at ?? '');
      const { last } = this.#target ?? target;
      if (this.#target === target || this.#target?.folder === folder)
        if (last === null || made > last) await this.#keepTarget({ ...target, last: made });
    }
    const there = [...names, ...own.map(({ name }) => name)].filter((name) => BACKUP_NAME.test(name));
    for (const old of [...new Set(there)].sort().reverse().slice(this.#keep()))
      await this.#there.remove(join(folder, old));
  }

  /** Written under a name of its own, flushed, read back, and only then under the name by which it counts. */
  async #copy(folder: string, name: string): Promise<void> {
    const draft = join(folder, `.${name}.new`);
    const file = await this.#there.create(draft);
    let sum = 0;
    try {
      for await (const bytes of slices(this.#own, join(this.#backups.folder, name))) {
        sum = crc32(bytes, sum);
        await writeAll(file, bytes);
      }
      await file.flush();
    } finally {
      await file.close();
    }
    let back = 0;
    for await (const bytes of slices(this.#there, draft)) back = crc32(bytes, back);
    if (back !== sum) throw new StoreTrouble('what was written there does not read back as it was');
    await this.#there.rename(draft, join(folder, name));
    await this.#there.flushFolder(folder);
  }

  async #signIn(folder: string): Promise<string | null> {
    const bytes = await this.#there.read(join(folder, SIGN_NAME));
    if (bytes === null) return null;
    try {
      return z.object({ sign: z.string() }).parse(JSON.parse(bytes.toString('utf8'))).sign;
    } catch {
      return null;
    }
  }

  async #signed(folder: string): Promise<string> {
    const sign = randomBytes(12).toString('hex');
    const { drafts: _own, ...there } = this.#there;
    await replaceFile(there, join(folder, SIGN_NAME), `${JSON.stringify({ format: FORMAT, sign })}\n`);
    return sign;
  }

  async #keepTarget(target: Target): Promise<void> {
    await replaceFile(
      this.#own,
      join(this.#data, RECORD_NAME),
      sealed(documentText({ format: FORMAT, ...target })),
    );
    this.#target = target;
  }
}
