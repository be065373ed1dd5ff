import { join } from 'node:path';
import { judgeMark } from '#core/marks/judge-mark.ts';
import { type Located, locate } from '#core/marks/live-plan.ts';
import type { AcceptedMark, JobProgress, Mark, Refusal } from '#core/marks/mark.ts';
import { applyMark } from '#core/marks/progress.ts';
import { isFinished } from '#core/marks/stage-state.ts';
import type { PrintedOnce } from '#core/api/prints-api.ts';
import { acceptMark, contentOf } from './accept-mark.ts';
import { type Board, boardOf } from './board-cache.ts';
import { rememberMark } from './entry-fold.ts';
import { type FilePort, StoreBusy, wordsOf } from './file-port.ts';
import type { JobStore } from './job-store.ts';
import { LOG_FORMAT, type LogEntry, readEntry } from './log-entry.ts';
import { openFolder, type OpenFolder, SNAPSHOT_NAME } from './open-folder.ts';
import type { Printed } from './print-record.ts';
import { progressAt } from './progress-at.ts';
import type { ShopStore } from './shop-store.ts';
import { writeSnapshot } from './snapshot.ts';
import type { StoredJob } from './stored-job.ts';
import { finishSwap, swapBegun, swapIn } from './swap.ts';

export type Marked =
  | {
      readonly ok: true;
      readonly accepted: AcceptedMark;
      readonly stored: StoredJob;
      /** Of the door that the mark belongs to. */
      readonly progress: JobProgress;
    }
  | {
      readonly ok: false;
      readonly code: Refusal;
      readonly missing?: readonly string[];
      readonly figures?: Readonly<Record<string, string>>;
    };

export interface StoreOptions {
  readonly port: FilePort;
  readonly folder: string;
  /** Of the program: a snapshot of another version is not trusted. */
  readonly version: string;
  /** Told of what goes wrong beside a request. */
  readonly report?: (trouble: string) => void;
}

/** How many entries make a new snapshot worth while: in passing, and when the hub stops. */
const SNAPSHOT_EVERY = 100_000;
const SNAPSHOT_AT_STOP = 1000;

/** All that the hub keeps: the jobs and the shop, which people write, and the log of what happened, folded into progress. */
export class Store {
  readonly #options: StoreOptions;
  #open: OpenFolder;
  /** Progress of doors with what is still being written. New marks are judged by this; screens see what is on disk. */
  readonly #pending = new Map<string, JobProgress>();
  /** Marks that are being written, by id. */
  readonly #flying = new Map<string, { readonly content: string; readonly outcome: Promise<Marked> }>();
  /** Changes of documents that are under way. */
  readonly #changing = new Set<Promise<unknown>>();
  readonly #listeners = new Set<(accepted: AcceptedMark) => void>();
  #unsnapped: number;
  #snapping: Promise<void> | null = null;
  #barred: string | null = null;

  private constructor(options: StoreOptions, open: OpenFolder) {
    this.#options = options;
    this.#open = open;
    this.#unsnapped = open.noSnapshot === null ? 0 : open.log.lastSeq;
  }

  /** Opens a data folder. The caller holds the lock. */
  static async open(options: StoreOptions): Promise<Store> {
    const { port, folder, version } = options;
    await port.makeFolder(folder);
    await finishSwap(port, folder);
    return new Store(options, await openFolder(port, folder, version));
  }

  get jobs(): JobStore {
    return this.#open.jobs;
  }

  get shop(): ShopStore {
    return this.#open.shop;
  }

  /** What was found when the folder was opened. */
  get found(): Pick<OpenFolder, 'scanned' | 'strange' | 'noSnapshot'> {
    return this.#open;
  }

  /** The log, up to where it is on disk, and why its last write failed, if it did. */
  get log(): Pick<OpenFolder['log'], 'answered' | 'trouble' | 'from' | 'path'> {
    return this.#open.log;
  }

  /** The number of the last entry on disk. */
  get lastSeq(): number {
    return this.#open.log.answered.seq;
  }

  /** Has anything ever happened in a job of this id? */
  seen(job: string): boolean {
    return this.#open.folded.book.has(job);
  }

  /** A job's progress, as far as it is on disk. */
  progress(job: string): JobProgress {
    return this.#open.folded.book.job(job);
  }

  /** The same for one door: enough for its parts. */
  doorProgress(job: string, door: string): JobProgress {
    return this.#open.folded.book.door(job, door);
  }

  /** How many of a job's doors are not finished. */
  left(job: StoredJob): number {
    const { id, doorNames } = job.summary;
    return doorNames.filter((door) => !isFinished(this.doorProgress(id, door), door)).length;
  }

  /** How far every door has come. */
  board(): Board {
    return boardOf(this.jobs.all(), (job, door) => this.doorProgress(job, door));
  }

  /** Each time that each of a job's stickers was printed. */
  printed(job: string): Record<string, PrintedOnce[]> {
    return this.#open.folded.prints.of(job);
  }

  /** The part that a code stands or stood for, its job, and the progress of its door. */
  find(code: string): { stored: StoredJob; found: Located; progress: JobProgress } | null {
    const whose = this.#whose(code);
    if (whose === null) return null;
    const progress = this.doorProgress(whose.stored.document.id, whose.door);
    const found = locate(whose.stored.index, progress, code);
    return found === null ? null : { stored: whose.stored, found, progress };
  }

  #whose(code: string): { readonly stored: StoredJob; readonly door: string } | null {
    const owner = this.jobs.ownerOf(code);
    const door = owner?.index.parts.get(code)?.door;
    if (owner !== undefined && door !== undefined) return { stored: owner, door };
    const replaced = this.#open.folded.replacements.get(code);
    const stored = replaced === undefined ? undefined : this.jobs.get(replaced.job);
    return replaced === undefined || stored === undefined ? null : { stored, door: replaced.door };
  }

  /**
   * Takes a mark: judged against all marks before it, written down, flushed, and only then answered. Rejects with a
   * StoreTrouble when it could not be written; then nothing of it is kept. The same id with the same content answers
   * as before.
   */
  async mark(mark: Mark): Promise<Marked> {
    const flying = this.#flying.get(mark.id);
    if (flying !== undefined)
      return flying.content === contentOf(mark) ? flying.outcome : { ok: false, code: 'id-reused' };
    const seq = this.#open.folded.ids.find(mark.id);
    if (seq !== undefined) return this.#again(seq, mark);
    const whose = this.#whose(mark.code);
    if (whose === null) return { ok: false, code: 'unknown-code' };
    const { stored, door } = whose;
    const key = `${stored.document.id}\n${door}`;
    const before = this.#pending.get(key) ?? this.doorProgress(stored.document.id, door);
    const judged = judgeMark(locate(stored.index, before, mark.code), before, mark);
    if (!judged.ok) return judged;
    this.#admit();
    const outcome = this.#write(stored, key, before, acceptMark(stored, before, mark, judged));
    this.#flying.set(mark.id, { content: contentOf(mark), outcome });
    try {
      return await outcome;
    } finally {
      this.#flying.delete(mark.id);
    }
  }

  #write(
    stored: StoredJob,
    key: string,
    before: JobProgress,
    unnumbered: Omit<AcceptedMark, 'seq'>,
  ): Promise<Marked> {
    const { log, folded } = this.#open;
    return new Promise<Marked>((done, failed) => {
      const seq = log.append({ kind: 'mark', mark: unnumbered } satisfies LogEntry, {
        onDisk: () => {
          const progress = folded.book.take(accepted);
          rememberMark(folded, accepted);
          if (this.#pending.get(key)?.seq === seq) this.#pending.delete(key);
          this.#countEntry();
          for (const listener of this.#listeners) listener(accepted);
          done({ ok: true, accepted, stored, progress });
        },
        refused: (trouble) => {
          this.#pending.clear();
          failed(trouble);
        },
      });
      const accepted: AcceptedMark = { seq, ...unnumbered };
      this.#pending.set(key, applyMark(before, accepted));
    });
  }

  /** Writes down that stickers were printed. */
  print(printed: Omit<Printed, 'at' | 'reprint'>): Promise<void> {
    this.#admit();
    const { log, folded } = this.#open;
    const before = folded.prints.of(printed.job);
    const print: Printed = {
      ...printed,
      at: new Date().toISOString(),
      reprint: printed.codes.some((code) => Object.hasOwn(before, code)),
    };
    return new Promise((done, failed) =>
      log.append({ kind: 'print', print } satisfies LogEntry, {
        onDisk: () => {
          folded.prints.take(print);
          this.#countEntry();
          done();
        },
        refused: failed,
      }),
    );
  }

  /** What the answer to this id was: the same again if the content is the same. */
  async #again(seq: number, mark: Mark): Promise<Marked> {
    const entry = readEntry(await this.#open.log.entryAt(seq), LOG_FORMAT);
    if (entry?.kind !== 'mark' || contentOf(entry.mark.mark) !== contentOf(mark))
      return { ok: false, code: 'id-reused' };
    const accepted: AcceptedMark = { seq, ...entry.mark };
    const stored = this.jobs.get(accepted.job);
    if (stored === undefined) return { ok: false, code: 'unknown-code' };
    const now = this.doorProgress(accepted.job, accepted.door);
    return { ok: true, accepted, stored, progress: progressAt(now, accepted) };
  }

  /** Every accepted mark after this number, in order, up to what is on disk now; read from the log piece by piece. */
  async *since(after: number): AsyncGenerator<AcceptedMark> {
    for await (const { seq, entry } of this.#open.log.from(after)) {
      const read = readEntry(entry, LOG_FORMAT);
      if (read?.kind === 'mark') yield { seq, ...read.mark };
    }
  }

  /** Calls back for every mark once it is on disk; returns what ends it. */
  onMark(listener: (accepted: AcceptedMark) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  #admit(): void {
    if (this.#barred !== null) throw new StoreBusy(this.#barred);
  }

  #countEntry(): void {
    this.#unsnapped += 1;
    if (this.#unsnapped >= SNAPSHOT_EVERY) void this.snapshot();
  }

  /** Writes a snapshot of what is on disk now, unless one is being written. One that fails is reported and costs nothing. */
  snapshot(): Promise<void> {
    this.#snapping ??= this.#snapshot().finally(() => (this.#snapping = null));
    return this.#snapping;
  }

  async #snapshot(): Promise<void> {
    const { port, folder, version, report } = this.#options;
    const { log, folded, jobs } = this.#open;
    this.#unsnapped = 0;
    try {
      await writeSnapshot(
        port,
        join(folder, SNAPSHOT_NAME),
        { path: log.path, start: { place: log.answered, index: log.index } },
        folded,
        jobs.all().map(({ summary }) => summary),
        version,
      );
    } catch (error) {
      report?.(`no snapshot could be written: ${wordsOf(error)}`);
    }
  }

  /** Changes what people write, unless that is not to be changed now. */
  async change<T>(work: () => Promise<T>): Promise<T> {
    this.#admit();
    const changing = work();
    this.#changing.add(changing);
    try {
      return await changing;
    } finally {
      this.#changing.delete(changing);
    }
  }

  /**
   * Puts other data in place of these: `prepare` makes a whole folder of them while nothing is taken, then that folder
   * is swapped in and opened. Whatever happens in between, the next start finds the one or the other, whole. Numbers go
   * on from where they were, so that no reader is told an older number than it knows.
   */
  async replaceAll<T extends { readonly folder: string }>(
    from: string,
    prepare: () => Promise<T>,
  ): Promise<T> {
    const { port, folder, version } = this.#options;
    this.#admit();
    this.#barred = 'the data are being replaced';
    let swapping = false;
    let incoming: T;
    try {
      await Promise.allSettled(this.#changing);
      incoming = await prepare();
      await this.#snapping;
      await this.#open.log.close();
      swapping = true;
      await swapIn(port, folder, incoming.folder);
      const reached = this.#open.log.lastSeq;
      this.#open = await openFolder(port, folder, version);
      this.#open.log.goOnFrom(reached);
      this.#pending.clear();
      this.#unsnapped = this.#open.log.lastSeq;
      swapping = false;
    } finally {
      this.#barred =
        swapping || (await swapBegun(port, folder))
          ? 'other data could not be put in place wholly: stop the hub, mend the folder, and start it again'
          : null;
    }
    await this.#note({ kind: 'restored', from, at: new Date().toISOString() });
    return incoming;
  }

  #note(entry: LogEntry): Promise<void> {
    return new Promise((onDisk, refused) => this.#open.log.append(entry, { onDisk, refused }));
  }

  /** Finishes what is being written, and leaves a snapshot when much has happened since the last one. */
  async close(): Promise<void> {
    this.#barred = 'the hub is stopping';
    await this.#open.log.close();
    await this.#snapping;
    if (this.#unsnapped >= SNAPSHOT_AT_STOP) await this.snapshot();
  }
}
