import { isTree } from '#core/fields/read-shape.ts';
import type { Units } from '#core/length/units.ts';
import type { DocumentTrouble } from '../files/aside.ts';
import { Turns } from '../files/turns.ts';
import type { JobDocuments } from '../journal.ts';
import { howMuchIn } from './how-much.ts';
import { type Changed, JobChanges, type JobMarks, type SaveOptions } from './job-change.ts';
import type { JobDocument } from './job-document.ts';
import { JobKeeper } from './job-keeper.ts';
import type { Change, JobMaker } from './job-maker.ts';
import { JobShelf } from './job-shelf.ts';
import { type Damaged, JobStart } from './job-start.ts';
import { NewJobs, type Saved } from './new-jobs.ts';
import { PlanDamaged, type StoredJob } from './stored-job.ts';

/** What the jobs need of the rest of the store. */
export interface JobsNeed {
  /** The shop's tools as a job keeps them from the day it is saved. */
  readonly profileFor: (units: Units) => Record<string, unknown>;
  /** Who plans. */
  readonly maker: JobMaker;
  readonly marks: JobMarks;
}

/** The jobs, a document each with its plan beside it; those in the bin are kept whole, and are in no list but its own. */
export class JobStore {
  readonly #documents: JobDocuments;
  readonly #shelf = new JobShelf();
  readonly #keeper: JobKeeper;
  readonly #start: JobStart;
  readonly #new: NewJobs;
  readonly #changes: JobChanges;
  /** One after another: what two jobs have in common; and for each job what happens to it. */
  readonly #turns = new Turns();
  readonly #turnsOf = new Map<string, Turns>();
  readonly #closing = new AbortController();
  #holdMarks: (job: string) => Promise<() => void> = async () => () => undefined;
  #onReady: (job: string) => void = () => undefined;
  #onDamaged: (damaged: Damaged) => void = (damaged) => this.damaged.push(damaged);
  /** Kept plans that did not lie there as they were written, found before anybody was told of them. */
  readonly damaged: Damaged[] = [];

  /** `version` is that of the program: it is kept with the plans that it makes. */
  constructor(documents: JobDocuments, version: string, { maker, marks, profileFor }: JobsNeed) {
    const closing = this.#closing.signal;
    const shelf = this.#shelf;
    const keeper = new JobKeeper(documents, version, maker, shelf, closing);
    const profiles = () => ({ in: profileFor('in'), mm: profileFor('mm') });
    this.#documents = documents;
    this.#keeper = keeper;
    this.#start = new JobStart({
      documents,
      version,
      keeper,
      shelf,
      closing,
      ready: (job) => this.#onReady(job),
      damaged: (damaged) => this.#onDamaged(damaged),
      mend: (stored) => this.mended(stored),
    });
    this.#new = new NewJobs({ keeper, shelf, maker, profiles, turns: this.#turns });
    this.#changes = new JobChanges({
      documents,
      keeper,
      shelf,
      maker,
      profiles,
      marks,
      holdMarks: (job) => this.#holdMarks(job),
    });
  }

  get troubles(): DocumentTrouble[] {
    return this.#start.troubles;
  }

  /** Jobs whose plan could not be kept; a later start tries again. */
  get unkept(): readonly { readonly job: string; readonly reason: string }[] {
    return this.#keeper.unkept;
  }

  /** Marks of a job are held back by this for as long as what they are judged by changes. */
  holdMarksBy(hold: (job: string) => Promise<() => void>): void {
    this.#holdMarks = hold;
  }

  /** Who is told of a job that was made ready after the start, and of a kept plan that was damaged. */
  tellOf(ready: (job: string) => void, damaged: (damaged: Damaged) => void): void {
    this.#onReady = ready;
    this.#onDamaged = damaged;
    for (const each of this.damaged.splice(0)) damaged(each);
  }

  /**
   * Reads every job's document; those whose plan this version has kept with its index are not planned. One from a newer
   * version stops the start. Nothing is written yet: gives the names of those in an older form.
   */
  read(): Promise<string[]> {
    return this.#start.read();
  }

  /** Takes what was read, and makes what is lacking: see there. */
  settle(writable = true): Promise<void> {
    return this.#start.settle(writable);
  }

  /** Jobs that cannot be used yet: their plan is being made since the start. */
  get notReady(): readonly string[] {
    return this.#start.notReady;
  }

  /** Waits until every job is there. */
  ready(): Promise<void> {
    return this.#start.ready();
  }

  /** Gives up what is still being made. */
  close(): void {
    this.#closing.abort();
  }

  get(id: string): StoredJob | undefined {
    return this.#shelf.get(id);
  }

  /** In the order in which they were added. */
  all(): StoredJob[] {
    return this.#shelf.all();
  }

  /** The job whose first blank carries this code, unless it is in the bin. */
  ownerOf(code: string): StoredJob | undefined {
    return this.#shelf.ownerOf(code);
  }

  /** The same of those in the bin. */
  binnedOwnerOf(code: string): StoredJob | undefined {
    return this.#shelf.binnedOwnerOf(code);
  }

  /** A job in the bin. */
  getBinned(id: string): StoredJob | undefined {
    return this.#shelf.getBinned(id);
  }

  /** What is in the bin, what was put there last first. */
  bin(): StoredJob[] {
    return this.#shelf.bin();
  }

  /** How many jobs' documents there are, those in the bin and those not ready yet among them. */
  get count(): number {
    return this.#shelf.count + this.notReady.length;
  }

  /** Saves a new job. Where its codes exist already it gets a fresh id. `seen` tells of ids that were used before and removed. */
  async add(file: unknown, seen: (id: string) => boolean, options: SaveOptions = {}): Promise<Saved> {
    await this.ready();
    return this.#new.add(file, seen, options);
  }

  /** Saves a changed job over the revision that the writer saw. Its id, and so its stickers' codes, stay. */
  update(id: string, revision: number, file: unknown, options: SaveOptions = {}): Promise<Changed> {
    return this.#change(id, revision, options, { kind: 'file', file: textOf(file) }, howMuchIn(file));
  }

  /** Plans a job anew by sizes as they came out. Its file stays as it was written. */
  measure(
    id: string,
    revision: number,
    measured: Record<string, unknown>,
    options: SaveOptions = {},
  ): Promise<Changed> {
    const doors = isTree(measured.doors) ? Object.keys(measured.doors).length : 0;
    const how = { doors, marks: doors };
    return this.#change(id, revision, options, { kind: 'measured', measured: textOf(measured) }, how);
  }

  /** Saves a job as it was at an earlier revision: its file, its tools, and its sizes as they came out then. */
  async goBack(id: string, revision: number, to: number, options: SaveOptions = {}): Promise<Changed> {
    const past = await this.#documents.readPast(id, to).catch(() => null);
    const current = this.get(id)?.document.revision;
    if (current === undefined) return { kind: 'unknown' };
    if (past === null || to >= current) return { kind: 'no-revision' };
    const change: Change = { kind: 'back', to, past: JSON.stringify(past) };
    return this.#change(id, revision, options, change, howMuchIn(past.file));
  }

  /** The earlier revisions that can be gone back to, the newest first. */
  past(id: string): Promise<readonly number[]> {
    return this.#documents.past(id);
  }

  /** The documents of those, one after another; one that cannot be read, or is gone meanwhile, is passed over. */
  async *pastOf({ document: { id, revision: current } }: StoredJob): AsyncGenerator<JobDocument> {
    for (const revision of await this.#documents.past(id)) {
      if (revision >= current) continue;
      const past = await this.#documents.readPast(id, revision).catch(() => null);
      if (past !== null) yield past;
    }
  }

  #change(
    id: string,
    revision: number,
    options: SaveOptions,
    change: Change,
    how: { readonly doors: number; readonly marks: number },
  ): Promise<Changed> {
    return this.#turnOf(id).take(() => this.#changes.make(id, revision, options, change, how));
  }

  #turnOf(id: string): Turns {
    const turns = this.#turnsOf.get(id) ?? new Turns();
    this.#turnsOf.set(id, turns);
    return turns;
  }

  /** Puts a job into the bin, with all that is kept of it, or takes it out again. False where there is none. */
  toBin(id: string): Promise<boolean> {
    return this.#alone(id, () => this.#move(this.get(id), now()));
  }

  fromBin(id: string): Promise<boolean> {
    return this.#alone(id, () => this.#move(this.getBinned(id), null));
  }

  #alone<T>(id: string, work: () => Promise<T>): Promise<T> {
    return this.#turnOf(id).take(() => this.#turns.take(work));
  }

  async #move(stored: StoredJob | undefined, binned: string | null): Promise<boolean> {
    if (stored === undefined) return false;
    const document = this.#shelf.document(stored.document.id);
    if (document === undefined) throw new Error('every job has its document');
    const moved = stored.with({ ...stored.document, binned });
    document.data = moved.document;
    try {
      await document.write();
    } catch (error) {
      document.data = stored.document;
      throw error;
    }
    this.#shelf.keep(moved, document);
    return true;
  }

  /** Takes a job away for good, out of the bin too, after `before`. False where there is none. */
  remove(id: string, before: () => Promise<void> = () => Promise.resolve()): Promise<boolean> {
    return this.#alone(id, async () => {
      if ((this.get(id) ?? this.getBinned(id)) === undefined) return false;
      await before();
      await this.#documents.remove(id);
      this.#shelf.drop(id);
      this.#turnsOf.delete(id);
      return true;
    });
  }

  /**
   * The job whose kept plan could not be read: as it stands now, where it was just being saved; else with that plan made
   * anew, of which everybody is told.
   */
  mended(found: StoredJob): Promise<StoredJob> {
    const { id } = found.document;
    return this.#turnOf(id).take(async () => {
      const stored = this.get(id) ?? this.getBinned(id);
      const document = this.#shelf.document(id);
      if (stored === undefined || document === undefined) throw new PlanDamaged();
      if (stored.index !== found.index) return stored;
      const made = await this.#keeper.planned(stored.document, null);
      const mended = await this.#keeper.withPlan(
        made,
        stored.document,
        stored.summary.hash,
        this.#start.writable,
      );
      this.#onDamaged({ job: stored.summary.job, anew: true });
      this.#shelf.keep(mended, document);
      return mended;
    });
  }
}

function now(): string {
  return new Date().toISOString();
}

/** As JSON; what is not told at all is null there. */
function textOf(value: unknown): string {
  return JSON.stringify(value ?? null);
}
