import { randomBytes } from 'node:crypto';
import type { JobProgress } from '#core/marks/mark.ts';
import { isTree } from '#core/fields/read-shape.ts';
import type { Fault } from '#core/fields/fault.ts';
import type { Units } from '#core/length/units.ts';
import type { DocumentTrouble } from '../files/aside.ts';
import { wordsOf } from '../files/file-port.ts';
import { NewerFormat } from '../files/migration.ts';
import { Stretch } from '../files/stretch.ts';
import { Turns } from '../files/turns.ts';
import type { FoundDocument, JobDocuments } from '../journal.ts';
import { howMuchIn } from './how-much.ts';
import { type JobDocument, MOST_PAST, readJobDocument } from './job-document.ts';
import { JobIndex } from './job-index.ts';
import type { Change, Comes, JobMaker, MadeJob, Profiles } from './job-maker.ts';
import { addedOf, JobShelf } from './job-shelf.ts';
import { hashOf } from './make-job.ts';
import { digestOf } from './progress-digest.ts';
import { PlanDamaged, type PlanReader, StoredJob } from './stored-job.ts';

export type Saved =
  | {
      readonly kind: 'saved';
      readonly stored: StoredJob;
      readonly codesChanged: boolean;
      /** Every part with its code, as text of an answer. */
      readonly parts: string;
    }
  | NotSaved;

export type Changed =
  | {
      readonly kind: 'changed';
      readonly before: StoredJob;
      readonly stored: StoredJob;
      readonly parts: string;
      readonly comes: Comes;
    }
  | NotSaved;

export type NotSaved =
  | { readonly kind: 'faults'; readonly faults: readonly Fault[] }
  | { readonly kind: 'stale'; readonly revision: number }
  /** There is no such job; or it has no such revision any more. */
  | { readonly kind: 'unknown' }
  | { readonly kind: 'no-revision' };

/** Who saves, where that is known, whether it is only reckoned what would come of it, and until when it is wanted. */
export interface SaveOptions {
  readonly by?: string | undefined;
  readonly dry?: boolean;
  readonly signal?: AbortSignal;
}

/** What the jobs need of the rest of the store. */
export interface JobsNeed {
  /** The shop's tools as a job keeps them from the day it is saved. */
  readonly profileFor: (units: Units) => Record<string, unknown>;
  /** Who plans. */
  readonly maker: JobMaker;
  readonly marks: {
    /** The number of the last mark. */
    readonly last: () => number;
    /** The doors of a job that have marks; only those that have some after a number. */
    readonly of: (job: string, since: number) => Iterable<readonly [door: string, progress: JobProgress]>;
  };
}

/** A job of more doors is large: its plan is read from its file a door at a time, and nobody waits for it at the start. */
export const HELD_DOORS = 200;

interface ReadJob extends FoundDocument<JobDocument> {
  readonly name: string;
  readonly hash: string;
  /** Null where its plan is still to be made. */
  readonly stored: StoredJob | null;
}

/** The jobs, a document each with its plan beside it; those in the bin are kept whole, and are in no list but its own. */
export class JobStore {
  readonly #documents: JobDocuments;
  /** Of the program: kept with the plans that it makes. */
  readonly #version: string;
  readonly #need: JobsNeed;
  #shelf = new JobShelf();
  /** One after another: what two jobs have in common; and for each job what happens to it. */
  readonly #turns = new Turns();
  readonly #turnsOf = new Map<string, Turns>();
  /** What was read and is not taken yet, and what could not be read. */
  readonly #read: ReadJob[] = [];
  readonly #unread: { readonly name: string; readonly error: unknown }[] = [];
  /** Jobs whose plan is being made since the start. */
  readonly #making = new Map<string, { readonly document: JobDocument; readonly made: Promise<void> }>();
  readonly #closing = new AbortController();
  #writable = true;
  #lastAdded = 0;
  #holdMarks: (job: string) => Promise<() => void> = async () => () => undefined;
  #onReady: (job: string) => void = () => undefined;
  #onDamaged: (damaged: Damaged) => void = (damaged) => this.damaged.push(damaged);
  readonly troubles: DocumentTrouble[] = [];
  /** Jobs whose plan could not be kept; a later start tries again. */
  readonly unkept: { readonly job: string; readonly reason: string }[] = [];
  /** Kept plans that did not lie there as they were written, found before anybody was told of them. */
  readonly damaged: Damaged[] = [];

  constructor(documents: JobDocuments, version: string, need: JobsNeed) {
    this.#documents = documents;
    this.#version = version;
    this.#need = need;
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
  async read(): Promise<string[]> {
    for (const name of await this.#documents.names()) {
      try {
        this.#read.push(await this.#readOne(name));
      } catch (error) {
        if (error instanceof NewerFormat) throw error;
        this.#unread.push({ name, error });
      }
    }
    return this.#read.filter(({ older }) => older).map(({ name }) => name);
  }

  async #readOne(name: string): Promise<ReadJob> {
    const found = await this.#documents.open(name);
    const document = found.document.data;
    const hash = hashOf(document);
    return { ...found, name, hash, stored: await this.#indexed(document, hash) };
  }

  /** A job by the index of its kept plan; null where that is to be made anew. */
  async #indexed(document: JobDocument, hash: string): Promise<StoredJob | null> {
    const { id } = document;
    const kept = await this.#documents.index(id, { hash, version: this.#version });
    if (kept === null) return null;
    const { index, plan } = kept;
    const reader: PlanReader = { slice: (from, to) => this.#documents.planSlice(id, plan, from, to) };
    if (index.head.doors > HELD_DOORS) {
      void this.#lookThrough(id, () => this.#documents.isAsKept(id, plan));
      return new StoredJob({ document, hash, index, lines: null, reader });
    }
    const whole = await this.#documents.isAsKept(id, plan);
    const lines = whole ? await this.#documents.lastPlan(id) : null;
    if (lines === null) {
      this.#onDamaged({ job: index.head.job, anew: true });
      return null;
    }
    return new StoredJob({ document, hash, index, lines, reader });
  }

  /** Looks through a large kept plan once the jobs are there; one that is damaged is made anew. */
  async #lookThrough(id: string, isWhole: () => Promise<boolean>): Promise<void> {
    await new Promise((later) => setTimeout(later, LOOK_AFTER_MS).unref());
    const stored = this.#shelf.get(id);
    if (stored === undefined || this.#closing.signal.aborted) return;
    const whole = await isWhole().catch(() => true);
    if (!whole) await this.mended(stored).catch(() => undefined);
  }

  /**
   * Takes what was read: what is no job's document is put aside and reported, one in an older form written in today's,
   * and each plan that is lacking made and kept beside its document; that of a large job while others are there already. A
   * job with faults is here like any other. Where the disk is not `writable` all is taken as it lies there.
   */
  async settle(writable = true): Promise<void> {
    this.#writable = writable;
    for (const { name, error } of this.#unread.splice(0))
      this.troubles.push(await this.#documents.putAside(name, error));
    const read = this.#read.splice(0);
    for (const { document, older } of read) if (writable && older) await document.write();
    for (const { stored, document } of read) if (stored !== null) this.#shelf.keep(stored, document);
    const lacking = read
      .filter(({ stored }) => stored === null)
      .sort((a, b) => addedOf(a.document.data).localeCompare(addedOf(b.document.data)));
    for (const each of lacking) {
      const { id } = each.document.data;
      const made = this.#makeReady(each);
      this.#making.set(id, { document: each.document.data, made });
      if (howMuchIn(each.document.data.file).doors <= HELD_DOORS) await made;
      else
        void made.then(() => {
          if (this.#shelf.get(id) !== undefined) this.#onReady(id);
        });
    }
  }

  async #makeReady({ name, document }: ReadJob): Promise<void> {
    const { data } = document;
    try {
      const last = await this.#documents.lastPlan(data.id);
      const made = await this.#planned(data, last);
      const { damaged, stored } = await this.#keepMade(made, data, last);
      if (damaged) this.#onDamaged({ job: stored.summary.job, anew: false });
      this.#shelf.keep(stored, document);
    } catch (error) {
      if (this.#closing.signal.aborted) return;
      // A large one may have needed more than there was: its document stays where it is, and the next start tries again.
      const large = howMuchIn(data.file).doors > HELD_DOORS;
      this.troubles.push(
        large
          ? { file: name, reason: wordsOf(error), kept: name }
          : await this.#documents.putAside(name, error),
      );
    } finally {
      this.#making.delete(data.id);
    }
  }

  #planned(document: JobDocument, last: Uint8Array | null): Promise<MadeJob> {
    return this.#need.maker.makeJob(
      { make: 'plan', document: JSON.stringify(document), last },
      { ...howMuchIn(document.file), signal: this.#closing.signal },
    );
  }

  /** Keeps a plan that was made of a document that stays as it is. `damaged`: there was one from before, and it cannot be read. */
  async #keepMade(
    made: MadeJob,
    document: JobDocument,
    last: Uint8Array | null,
  ): Promise<{ readonly stored: StoredJob; readonly damaged: boolean }> {
    const stored = await this.#withPlan(made, document, made.hash, this.#writable);
    return { stored, damaged: made.anyway && last !== null };
  }

  /** Jobs that cannot be used yet: their plan is being made since the start. */
  get notReady(): readonly string[] {
    return [...this.#making.keys()];
  }

  /** Waits until every job is there. */
  async ready(): Promise<void> {
    while (this.#making.size > 0) await Promise.all([...this.#making.values()].map(({ made }) => made));
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
    return this.#shelf.count + this.#making.size;
  }

  /** Saves a new job. Where its codes exist already it gets a fresh id. `seen` tells of ids that were used before and removed. */
  async add(file: unknown, seen: (id: string) => boolean, { signal }: SaveOptions = {}): Promise<Saved> {
    if (!isTree(file)) return { kind: 'faults', faults: await this.#faultsOf(file) };
    await this.ready();
    const taken = (id: string) => this.get(id) !== undefined || this.getBinned(id) !== undefined || seen(id);
    const own = file.id ?? file.job;
    let codesChanged = typeof own === 'string' && taken(own);
    let id = codesChanged ? freshId() : null;
    const text = JSON.stringify(file);
    for (;;) {
      const made = await this.#need.maker.makeJob(
        { make: 'add', file: text, id, added: this.#addedNow(), at: now(), profiles: this.#profiles() },
        { ...howMuchIn(file), signal },
      );
      if (!made.ok) return { kind: 'faults', faults: made.faults };
      const document = readJobDocument(made.document);
      const stored = await this.#turns.take(async () => {
        const fresh = storedOf(made, document, made.hash, NOWHERE);
        if (taken(document.id) || this.#shelf.sharesCode(fresh)) return null;
        return this.#write(made, document, made.hash);
      });
      if (stored !== null) return { kind: 'saved', stored, codesChanged, parts: made.parts };
      codesChanged = true;
      id = freshId();
    }
  }

  async #faultsOf(file: unknown): Promise<readonly Fault[]> {
    const made = await this.#need.maker.makeJob(
      { make: 'add', file: JSON.stringify(file), id: null, added: '', at: '', profiles: this.#profiles() },
      { doors: 0, marks: 0 },
    );
    return made.ok ? [] : made.faults;
  }

  #profiles(): Profiles {
    return { in: this.#need.profileFor('in'), mm: this.#need.profileFor('mm') };
  }

  /** Now, but after every other job, whatever a clock that was set back says: jobs stand in this order. */
  #addedNow(): string {
    const times = [...this.all(), ...this.bin()].map(({ document }) => Date.parse(document.added ?? ''));
    const last = times.reduce((most, time) => (time > most ? time : most), this.#lastAdded);
    this.#lastAdded = Math.max(Date.now(), last + 1);
    return new Date(this.#lastAdded).toISOString();
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

  /**
   * What was marked by the plan of before and is set otherwise from now on is kept in the document: nothing else knows it.
   * Marks go on being judged by the old plan while the new one is made; for as long as it is put in place they wait, and
   * those that came meanwhile are looked at first. So each is judged by the one or the other.
   */
  #change(
    id: string,
    revision: number,
    { dry = false, by, signal }: SaveOptions,
    change: Change,
    how: { readonly doors: number; readonly marks: number },
  ): Promise<Changed> {
    return this.#turnOf(id).take(async () => {
      const before = this.get(id);
      if (before === undefined) return { kind: 'unknown' };
      if (before.document.revision !== revision) return { kind: 'stale', revision: before.document.revision };
      const old = howMuchIn(before.document.file);
      const much = {
        doors: Math.max(how.doors, old.doors),
        marks: Math.max(how.marks, old.marks),
        signal,
      };
      const since = this.#need.marks.last();
      const text = JSON.stringify(before.document);
      const last = lastOf(before);
      const made = await this.#need.maker.makeJob(
        {
          make: 'change',
          before: text,
          last,
          change,
          at: now(),
          by,
          profiles: this.#profiles(),
          progress: await this.#digest(id, 0),
        },
        much,
      );
      if (!made.ok) return { kind: 'faults', faults: made.faults };
      const { parts, comes } = made;
      const bare = readJobDocument(made.document);
      if (dry)
        return { kind: 'changed', before, stored: storedOf(made, bare, made.hash, NOWHERE), parts, comes };
      const release = await this.#holdMarks(id);
      try {
        const progress = await this.#digest(id, since);
        const late =
          progress === ''
            ? null
            : await this.#need.maker.makeJob(
                {
                  make: 'late',
                  before: text,
                  last,
                  whole: before.faults.length + made.faults.length > 0,
                  document: made.document,
                  measuring: change.kind === 'measured',
                  progress,
                },
                { doors: 0, marks: 0 },
              );
        const document = late === null ? bare : readJobDocument(late.document);
        await this.#documents.keepPast(before.document);
        const stored = await this.#write(made, document, late?.hash ?? made.hash);
        const over = revision - MOST_PAST;
        if (over > 0) await this.#documents.dropPast(id, over).catch(() => undefined);
        return { kind: 'changed', before, stored, parts, comes };
      } finally {
        release();
      }
    });
  }

  /** The marks of a job's doors, a line each; of those alone that have some after a number. */
  async #digest(id: string, since: number): Promise<string> {
    const lines: string[] = [];
    const stretch = new Stretch();
    for (const [door, progress] of this.#need.marks.of(id, since)) {
      lines.push(digestOf(door, progress));
      await stretch.giveWay();
    }
    return lines.join('\n');
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

  /** Writes a job down and puts it in place. Its plan comes second: where that cannot be kept, it stays in memory. */
  async #write(made: MadeJob, data: JobDocument, hash: string): Promise<StoredJob> {
    const { id } = data;
    const document = this.#shelf.document(id) ?? (await this.#documents.begin(data));
    const before = document.data;
    document.data = data;
    try {
      await document.write();
    } catch (error) {
      document.data = before;
      throw error;
    }
    const stored = await this.#withPlan(made, data, hash, true);
    this.#shelf.keep(stored, document);
    return stored;
  }

  /** A job with the plan that was made of it, kept beside its document where this version makes it itself. */
  async #withPlan(made: MadeJob, document: JobDocument, hash: string, write: boolean): Promise<StoredJob> {
    if (!write || made.faults.length > 0) return storedOf(made, document, hash, NOWHERE);
    const { id } = document;
    try {
      const kept = await this.#documents.keepPlan(id, { hash, version: this.#version }, made.plan);
      return storedOf(made, document, hash, {
        slice: (from, to) => this.#documents.planSlice(id, kept, from, to),
      });
    } catch (error) {
      this.unkept.push({ job: id, reason: wordsOf(error) });
      return storedOf(made, document, hash, NOWHERE);
    }
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
      const made = await this.#planned(stored.document, null);
      const mended = await this.#withPlan(made, stored.document, stored.summary.hash, this.#writable);
      this.#onDamaged({ job: stored.summary.job, anew: true });
      this.#shelf.keep(mended, document);
      return mended;
    });
  }
}

/** A kept plan that did not lie there as it was written: was it made anew, or can this version not make it? */
export interface Damaged {
  readonly job: string;
  readonly anew: boolean;
}

const LOOK_AFTER_MS = 500;

/** Lines that are kept nowhere stay in memory. */
const NOWHERE = null;

/** A job as it was made; its lines stay in memory where they are few, or are kept nowhere. */
function storedOf(made: MadeJob, document: JobDocument, hash: string, reader: PlanReader | null): StoredJob {
  const { plan, faults, anyway } = made;
  const index = new JobIndex(plan.head, plan.tables);
  const few = plan.head.doors <= HELD_DOORS;
  return new StoredJob({
    document,
    hash,
    index,
    faults,
    anyway,
    lines: reader === null || few ? new Uint8Array(plan.lines) : null,
    reader,
  });
}

/** The lines of the plan that a job with faults shows, for who makes another of it. */
function lastOf({ faults, anyway, lines }: StoredJob): Uint8Array | null {
  return faults.length === 0 || anyway ? null : lines;
}

function freshId(): string {
  return `job-${randomBytes(5).toString('hex')}`;
}

function now(): string {
  return new Date().toISOString();
}

/** As JSON; what is not told at all is null there. */
function textOf(value: unknown): string {
  return JSON.stringify(value ?? null);
}
