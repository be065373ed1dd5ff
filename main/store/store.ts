import { join } from 'node:path';
import type { Trouble } from '#core/api/office-api.ts';
import type { MarkedPart } from '#core/marks/judge-mark.ts';
import type { AcceptedMark, JobProgress, Mark } from '#core/marks/mark.ts';
import type { PrintedOnce } from '#core/api/prints-api.ts';
import type { BoardDoor } from '#core/marks/board.ts';
import { boardOf } from './folded/board-cache.ts';
import type { DocumentTrouble } from './files/aside.ts';
import { barredFolder } from './files/barred-folder.ts';
import { type FilePort, isUnwritable, StoreBusy, StoreTrouble, wordsOf } from './files/file-port.ts';
import type { JobMaker } from './documents/job-maker.ts';
import type { JobStore } from './documents/job-store.ts';
import { inThisThread } from './documents/make-job.ts';
import type { Journal } from './journal.ts';
import type { LogPlace } from './log/read-log.ts';
import { LOG_FORMAT, type LogEntry, readEntry } from './log/log-entry.ts';
import { countDamaged } from './log/count-damaged.ts';
import { renewLog } from './log/renew-log.ts';
import { binnedOwner, MarkDesk, type Marked, whoseCode } from './mark-desk.ts';
import { JOBS_NAME, LOG_NAME, SHOP_NAME, SNAPSHOT_NAME } from './files/folder-names.ts';
import { openFolder, type OpenFolder } from './open-folder.ts';
import type { LogReader } from './log/read-log.ts';
import type { Printed, PrintRecord } from './folded/print-record.ts';
import type { ShopStore } from './documents/shop-store.ts';
import { writeSnapshot } from './folded/snapshot.ts';
import { SnapshotKeeper } from './folded/snapshot-keeper.ts';
import type { PartInFull, StoredJob } from './documents/stored-job.ts';
import { type Standing, StandingRecord } from './standing/standing-record.ts';
import { type FoundThere, whatIsMissing } from './standing/what-is-missing.ts';
import { isJobFile } from './documents/job-files.ts';
import { finishSwap, INCOMING, swapBegun, swapIn } from './archive/swap.ts';

export interface StoreOptions {
  readonly port: FilePort;
  readonly folder: string;
  /** Of the program: a snapshot of another version is not trusted. */
  readonly version: string;
  /** Somebody who held the folder before may still have its log open: it is made anew first. */
  readonly renew?: boolean;
  /** Who plans jobs, where that is not done in this thread. */
  readonly maker?: JobMaker;
  /** Who reads a log, where that is not done in this thread. */
  readonly reader?: LogReader | undefined;
  /** Told of what goes wrong beside a request. */
  readonly report?: (trouble: string) => void;
}

/** All that the hub keeps: the jobs and the shop, which people write, and the log of what happened, folded into progress. */
export class Store {
  readonly #options: StoreOptions;
  #open: OpenFolder;
  readonly #desk: MarkDesk;
  /** Changes of documents that are under way. */
  readonly #changing = new Set<Promise<unknown>>();
  readonly #listeners = new Set<(accepted: AcceptedMark) => void>();
  readonly #ready = new Set<(job: string) => void>();
  readonly #snapshots: SnapshotKeeper;
  readonly #standing: StandingRecord;
  #pin: boolean;
  /** Damaged lines, as far as the log was looked through, and how many were known before. */
  #damaged: number;
  #damagedBefore: number;
  #barred: string | null = null;

  private constructor(options: StoreOptions, open: OpenFolder, standing: StandingRecord) {
    this.#options = options;
    this.#open = open;
    this.#standing = standing;
    this.#pin = standing.before?.pin ?? false;
    this.#damaged = open.scanned.damaged.length;
    this.#damagedBefore = standing.before?.damaged ?? 0;
    this.#snapshots = new SnapshotKeeper(
      () => this.#writeSnapshot(),
      open.noSnapshot === null ? 0 : open.log.lastSeq,
    );
    this.#desk = new MarkDesk({
      open: () => this.#open,
      admit: () => this.#admit(),
      onDisk: (accepted) => {
        this.#snapshots.countEntry();
        this.#standing.note();
        for (const listener of this.#listeners) listener(accepted);
      },
    });
  }

  /**
   * Opens a data folder. The caller holds the lock. What is missing since it was last looked at is told from then on. On a
   * disk that is full or cannot be written on, what lies there is shown, and nothing is taken until the next start.
   */
  static async open(options: StoreOptions): Promise<Store> {
    const { port } = options;
    try {
      return await Store.#openOn(options);
    } catch (error) {
      if (port.barred !== undefined || !isUnwritable(error)) throw error;
      const barred = new StoreTrouble(`nothing can be written in the data folder (${wordsOf(error)})`, error);
      return Store.#openOn({ ...options, port: barredFolder(port, barred) });
    }
  }

  static async #openOn(options: StoreOptions): Promise<Store> {
    const { port, folder, version, renew = false, maker = inThisThread, reader } = options;
    await port.makeFolder(folder);
    await finishSwap(port, folder);
    await port.remove(join(folder, INCOMING));
    if (renew && port.barred === undefined) await renewLog(port, join(folder, LOG_NAME));
    const standing = await StandingRecord.open(port, folder);
    const there = await lookThere(port, folder);
    const open = await openFolder(port, folder, version, maker, reader);
    const { before } = standing;
    if (before !== null) {
      for (const trouble of whatIsMissing(before, there)) standing.tell(trouble);
      open.log.goOnFrom(before.seq);
    }
    for (const trouble of unreadIn(open, before?.damaged ?? 0)) standing.tell(trouble);
    const store = new Store(options, open, standing);
    store.#followJobs();
    standing.follow(() => store.#stands());
    store.#lookThrough().catch((error: unknown) => options.report?.(wordsOf(error)));
    // A disk that is full is told of; it is tried again.
    await standing.write().catch(() => standing.note());
    return store;
  }

  #followJobs(): void {
    const { jobs } = this.#open;
    jobs.holdMarksBy((job) => this.#desk.hold(job));
    jobs.tellOf(
      (job) => this.#ready.forEach((listener) => listener(job)),
      ({ job, anew }) => this.#standing.tell({ code: anew ? 'plan-damaged' : 'plan-lost', figures: { job } }),
    );
  }

  /** Calls back for every job that was made ready after the start. */
  onReady(listener: (job: string) => void): void {
    this.#ready.add(listener);
  }

  /** Looks through what a snapshot saved the start from reading; what was known before is told no more. */
  async #lookThrough(): Promise<void> {
    const open = this.#open;
    if (open.unread === 0) return;
    const wanted = () => this.#open === open && this.#barred === null;
    const damaged = await countDamaged(this.#options.port, open.log.path, open.unread, wanted);
    if (damaged === null || damaged === 0) return;
    this.#damaged += damaged;
    if (this.#damaged > this.#damagedBefore)
      this.#standing.tell({ code: 'log-damaged', figures: { count: this.#damaged } });
  }

  /** How the folder stands, for the next start to compare. */
  #stands(): Standing {
    const { log, jobs, shop } = this.#open;
    return {
      seq: log.lastSeq,
      bytes: log.answered.bytes,
      jobs: jobs.count,
      damaged: Math.max(this.#damagedBefore, this.#damaged),
      shop: shop.document.revision > 0,
      pin: this.#pin,
    };
  }

  /** What is lost, damaged, or in the way of recording: everybody is to know of it. */
  get troubles(): readonly Trouble[] {
    const reason = this.log.trouble?.message ?? this.#standing.trouble;
    const unwritten: Trouble[] = reason === null ? [] : [{ code: 'cannot-write', figures: { reason } }];
    return [...unwritten, ...this.#standing.troubles];
  }

  /** Somebody knows all that was told as lost or damaged: it is told no more. Gives how many those were. */
  async troublesKnown(): Promise<number> {
    const { length } = this.#standing.troubles;
    await this.#standing.known();
    return length;
  }

  /** Was a PIN set when the folder was last looked at? */
  get pinWas(): boolean {
    return this.#pin;
  }

  /** Keeps beside the data whether a PIN is set; one that was and is `gone` is told of, once. */
  async notePin(set: boolean, gone = false): Promise<void> {
    if (gone) this.#standing.tell({ code: 'pin-gone', figures: {} });
    this.#pin = set;
    await this.#standing.write();
  }

  get jobs(): JobStore {
    return this.#open.jobs;
  }

  get shop(): ShopStore {
    return this.#open.shop;
  }

  /** What was found when the folder was opened. */
  get found(): Pick<OpenFolder, 'scanned' | 'strange' | 'noSnapshot' | 'knewMore' | 'copied'> {
    return this.#open;
  }

  /** The log, up to where it is on disk, and why its last write failed, if it did. */
  get log(): Pick<Journal<LogPlace>['log'], 'answered' | 'trouble' | 'from' | 'lastEntry'> {
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

  /** The code that took the place of each of a job's spoiled blanks'. */
  replaced(job: string): Record<string, string> {
    const doors = new Set(
      [...this.#open.folded.replacements.values()].flatMap((each) => (each.job === job ? [each.door] : [])),
    );
    return Object.fromEntries(
      [...doors].flatMap((door) =>
        Object.values(this.doorProgress(job, door).parts).flatMap(({ code, replacedBy }) =>
          replacedBy === undefined ? [] : [[code, replacedBy]],
        ),
      ),
    );
  }

  /** How many of a job's doors are not finished. */
  async left({ summary: { id, doors }, index }: StoredJob): Promise<number> {
    const { book } = this.#open.folded;
    return doors - (await book.finished(id, (door) => index.doorNamed(door) !== undefined));
  }

  /** How far every door has come. */
  board(): BoardDoor[] {
    return [...this.boardLines()];
  }

  /** The same, a line at a time. */
  boardLines(): Generator<BoardDoor> {
    return boardOf(this.jobs.all(), (job, door) => this.doorProgress(job, door));
  }

  /** The progress of each door of a job that has marks, one at a time. */
  marked(job: string): Generator<readonly [door: string, progress: JobProgress]> {
    return this.#open.folded.book.marked(job);
  }

  /** Each time that each of a job's stickers was printed. */
  printed(job: string): ReadonlyMap<string, readonly PrintedOnce[]> {
    return this.#open.folded.prints.of(job);
  }

  /** The last stickers that left a printer of this machine; null when there were none. */
  get lastPrint(): PrintRecord['last'] {
    return this.#open.folded.prints.last;
  }

  /** The part that a code stands or stood for, its job, and the progress of its door. */
  find(code: string): Found | null {
    const whose = whoseCode(this.#open, code);
    if (whose === null) return null;
    const progress = this.doorProgress(whose.stored.document.id, whose.door);
    const found = whose.stored.index.locate(progress, code);
    return found === null ? null : { stored: whose.stored, found, progress };
  }

  /** The same with what it measures and all that is set on it. */
  async findInFull(code: string): Promise<(Found & { readonly full: PartInFull }) | null> {
    for (let tries = 0; tries < MOST_TRIES; tries += 1) {
      const known = this.find(code);
      if (known === null && this.jobs.notReady.length === 0) return null;
      if (known === null) {
        await this.jobs.ready();
        continue;
      }
      const { stored, found } = known;
      const full = await stored.part(found.door.door, found.part.part).catch(() => null);
      if (full === null) await this.jobs.mended(stored);
      // What was saved meanwhile is asked for once more, so that nothing is of the one and the other.
      else if (full !== undefined && this.jobs.get(stored.document.id)?.index === stored.index)
        return { ...known, full };
    }
    throw new StoreTrouble('what is set on this part cannot be read');
  }

  /**
   * Takes a mark: judged against all marks before it, written down, flushed, and only then answered. Rejects with a
   * StoreTrouble when it could not be written; then nothing of it is kept. The same id with the same content answers
   * as before.
   */
  mark(mark: Mark): Promise<Marked> {
    return this.#desk.take(mark);
  }

  /** Writes down that stickers were printed. */
  print(printed: Omit<Printed, 'at' | 'reprint'>): Promise<void> {
    this.#admit();
    const { log, folded } = this.#open;
    const before = folded.prints.of(printed.job);
    const print: Printed = {
      ...printed,
      at: new Date().toISOString(),
      reprint: printed.codes.some((code) => before.has(code)),
    };
    return new Promise((done, failed) =>
      log.append({ kind: 'print', print } satisfies LogEntry, {
        onDisk: () => {
          folded.prints.take(print);
          this.#snapshots.countEntry();
          this.#standing.note();
          done();
        },
        refused: failed,
      }),
    );
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

  /** Writes a snapshot of what is on disk now, unless one is being written. */
  snapshot(): Promise<void> {
    return this.#snapshots.write();
  }

  /** One that fails is reported and costs nothing. */
  async #writeSnapshot(): Promise<void> {
    const { port, folder, version, report } = this.#options;
    const { log, folded } = this.#open;
    try {
      await writeSnapshot(
        port,
        join(folder, SNAPSHOT_NAME),
        { path: log.path, start: { place: log.answered, index: log.index } },
        folded,
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
      this.#standing.note();
    }
  }

  /** Puts a job into the bin: its document stays, so its codes and marks do. False where there is none. */
  binJob(id: string): Promise<boolean> {
    return this.change(() => this.jobs.toBin(id));
  }

  /** Takes a job out of the bin again, as it was. False where there is none. */
  restoreJob(id: string): Promise<boolean> {
    return this.change(() => this.jobs.fromBin(id));
  }

  /** The job in the bin that a code stands or stood for; null where there is none. */
  findBinned(code: string): StoredJob | null {
    return binnedOwner(this.#open, code);
  }

  /** Takes a job away, for good. It is written down first that there is one less, so that it is not missed. */
  removeJob(id: string): Promise<boolean> {
    const left = () => this.#standing.write({ jobs: this.jobs.count - 1 });
    return this.change(() => this.jobs.remove(id, left));
  }

  /**
   * Puts other data, a whole folder of them, in place of these. From here on nothing is taken; what was is looked at
   * once more by `before`, then the folder is swapped in and opened. Whatever happens in between, the next start finds
   * the one or the other, whole. Who still reads the log that was is told that it is gone. Numbers go on from where they
   * were, so that no reader is told an older number than it knows.
   */
  async replaceAll<T>(from: string, incoming: string, before: () => Promise<T>): Promise<T> {
    const { port, folder, version, maker = inThisThread, reader } = this.#options;
    this.#admit();
    this.#barred = 'the data are being replaced';
    let swapping = false;
    let looked: T;
    try {
      await Promise.allSettled(this.#changing);
      looked = await before();
      await this.#snapshots.settled();
      await this.#open.log.close();
      swapping = true;
      this.#open.log.retire();
      await swapIn(port, folder, incoming);
      const reached = this.#open.log.lastSeq;
      this.#open.jobs.close();
      this.#open = await openFolder(port, folder, version, maker, reader);
      this.#followJobs();
      this.#open.log.goOnFrom(reached);
      this.#desk.forget();
      this.#snapshots.noneUpTo(this.#open.log.lastSeq);
      this.#damaged = 0;
      this.#damagedBefore = 0;
      this.#standing.renewed();
      swapping = false;
    } finally {
      this.#barred =
        swapping || (await swapBegun(port, folder))
          ? 'other data could not be put in place wholly: stop the hub, mend the folder, and start it again'
          : null;
    }
    await this.#note({ kind: 'restored', from, at: new Date().toISOString() });
    return looked;
  }

  #note(entry: LogEntry): Promise<void> {
    return new Promise((onDisk, refused) => this.#open.log.append(entry, { onDisk, refused }));
  }

  /** Finishes what is being written, and leaves a snapshot when much has happened since the last one. */
  async close(): Promise<void> {
    this.#barred = 'the hub is stopping';
    this.#open.jobs.close();
    await this.#open.log.close();
    await this.#snapshots.stop();
    await this.#standing.close().catch((error: unknown) => {
      this.#options.report?.(`the folder’s record could not be written: ${wordsOf(error)}`);
    });
  }
}

/** The part that a code stands or stood for, as it stands now, its job, and the progress of its door. */
export interface Found {
  readonly stored: StoredJob;
  readonly found: MarkedPart;
  readonly progress: JobProgress;
}

/** So often it is looked again for what is set on a part, where its job is being saved or its plan was damaged. */
const MOST_TRIES = 5;

/** What lies in a folder before anything in it is changed. */
async function lookThere(port: FilePort, folder: string): Promise<FoundThere> {
  const jobs = join(folder, JOBS_NAME);
  return {
    logBytes: await port.size(join(folder, LOG_NAME)),
    jobs: port.identity(jobs) === null ? 0 : (await port.list(jobs)).filter(isJobFile).length,
    shop: (await port.size(join(folder, SHOP_NAME))) !== null,
  };
}

/** What of it could not be read; `known` lines of the log were found damaged before. */
function unreadIn({ jobs, shop, scanned }: OpenFolder, known: number): Trouble[] {
  const figures = ({ reason, kept }: DocumentTrouble) => ({ reason: reason.slice(0, 100), kept });
  return [
    ...(scanned.damaged.length > known
      ? [{ code: 'log-damaged', figures: { count: scanned.damaged.length } } as const]
      : []),
    ...jobs.troubles.map((each) => ({ code: 'job-unreadable', figures: figures(each) }) as const),
    ...(shop.trouble === null ? [] : [{ code: 'shop-unreadable', figures: figures(shop.trouble) } as const]),
  ];
}
