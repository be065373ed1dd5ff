import { randomBytes } from 'node:crypto';
import { builtInFields, completeDefaults } from '#core/job/complete-defaults.ts';
import { convertJob, convertLengths } from '#core/job/convert-units.ts';
import type { Job } from '#core/job/job.ts';
import { readJob } from '#core/job/read-job.ts';
import { whatChanged } from '#core/job/what-changed.ts';
import type { RevisionNote } from '#core/api/revisions-api.ts';
import { isTree, type Tree } from '#core/fields/read-shape.ts';
import { livePlan } from '#core/marks/live-plan.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { keepAsMarked } from '#core/measured/as-marked.ts';
import { followJob } from '#core/measured/follow-job.ts';
import { type Measured, NOTHING_MEASURED } from '#core/measured/measured.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import type { Fault, Result } from '#core/fields/fault.ts';
import type { Units } from '#core/length/units.ts';
import type { DocumentTrouble } from '../files/aside.ts';
import { wordsOf } from '../files/file-port.ts';
import { NewerFormat } from '../files/migration.ts';
import type { FoundDocument, JobDocuments, KeptDocument } from '../journal.ts';
import { DOCUMENT_FORMAT, type JobDocument } from './job-document.ts';
import type { JobSummary } from './job-summary.ts';
import { planDocument } from './plan-document.ts';
import { reopen } from './reopen.ts';
import { openJob, type StoredJob, withAsMarked, withBinned, withLastPlan } from './stored-job.ts';
import { Turns } from '../files/turns.ts';

export type Saved =
  { readonly kind: 'saved'; readonly stored: StoredJob; readonly codesChanged: boolean } | NotSaved;

export type Changed =
  { readonly kind: 'changed'; readonly before: StoredJob; readonly stored: StoredJob } | NotSaved;

export type NotSaved =
  | { readonly kind: 'faults'; readonly faults: readonly Fault[] }
  | { readonly kind: 'stale'; readonly revision: number }
  /** There is no such job; or it has no such revision any more. */
  | { readonly kind: 'unknown' }
  | { readonly kind: 'no-revision' };

/** So many earlier revisions of a job are kept. */
export const MOST_PAST = 20;

/** Who saves, where that is known, and whether it is only reckoned what would come of it. */
export interface SaveOptions {
  readonly by?: string | undefined;
  readonly dry?: boolean;
}

/** Everything of a job's document that a save may change. */
type Changes = Partial<Pick<JobDocument, 'file' | 'profile' | 'measured'>>;

/** The shop's tools as a job keeps them from the day it is saved. */
export type ProfileFor = (units: Units) => Record<string, unknown>;

interface ReadJob extends FoundDocument<JobDocument> {
  readonly name: string;
  readonly stored: StoredJob;
  /** This version has just made a plan of it. */
  readonly planned: boolean;
}

/** The jobs, a document each with its plan beside it; those in the bin are kept whole, and are in no list but its own. */
export class JobStore {
  readonly #documents: JobDocuments;
  /** Of the program: kept with the plans that it makes. */
  readonly #version: string;
  readonly #profileFor: ProfileFor;
  readonly #progressOf: (job: string) => JobProgress;
  #jobs = new Map<string, StoredJob>();
  readonly #bin = new Map<string, StoredJob>();
  readonly #kept = new Map<string, KeptDocument<JobDocument>>();
  readonly #owners = new Map<string, string>();
  readonly #turns = new Turns();
  /** What was read and is not taken yet, and what could not be read. */
  readonly #read: ReadJob[] = [];
  readonly #unread: { readonly name: string; readonly error: unknown }[] = [];
  readonly troubles: DocumentTrouble[] = [];
  /** Jobs whose plan could not be kept at the start; a later start tries again. */
  readonly unkept: { readonly job: string; readonly reason: string }[] = [];

  constructor(
    documents: JobDocuments,
    version: string,
    profileFor: ProfileFor,
    progressOf: (job: string) => JobProgress,
  ) {
    this.#documents = documents;
    this.#version = version;
    this.#profileFor = profileFor;
    this.#progressOf = progressOf;
  }

  /**
   * Reads every job's document; those that a snapshot has a summary of are not planned yet. One from a newer version stops
   * the start. Nothing is written yet: gives the names of those in an older form.
   */
  async read(known: ReadonlyMap<string, JobSummary> = new Map()): Promise<string[]> {
    for (const name of await this.#documents.names()) {
      try {
        this.#read.push(await this.#readOne(name, known));
      } catch (error) {
        if (error instanceof NewerFormat) throw error;
        this.#unread.push({ name, error });
      }
    }
    return this.#read.filter(({ older }) => older).map(({ name }) => name);
  }

  async #readOne(name: string, known: ReadonlyMap<string, JobSummary>): Promise<ReadJob> {
    const found = await this.#documents.open(name);
    const { data } = found.document;
    const summary = known.get(data.id);
    const opened = openJob(data, summary);
    const stored = opened.ok
      ? opened.value
      : withLastPlan(data, opened.faults, await this.#documents.lastPlan(data.id));
    return { ...found, name, stored, planned: opened.ok && summary === undefined };
  }

  /**
   * Takes what was read: what is no job's document is put aside and reported, one in an older form written in today's,
   * and each plan that this version makes kept beside its document. A job with faults is here like any other. Where the
   * disk is not `writable` all is taken as it lies there.
   */
  async settle(writable = true): Promise<void> {
    for (const { name, error } of this.#unread.splice(0))
      this.troubles.push(await this.#documents.putAside(name, error));
    const read = this.#read.splice(0).sort((a, b) => addedOf(a.stored).localeCompare(addedOf(b.stored)));
    for (const { stored, document, older, planned } of read) {
      if (writable && older) await document.write();
      if (writable && planned)
        await this.#keepPlan(stored).catch((error: unknown) => {
          this.unkept.push({ job: stored.document.id, reason: wordsOf(error) });
        });
      this.#keep(stored, document);
    }
  }

  get(id: string): StoredJob | undefined {
    return this.#jobs.get(id);
  }

  /** In the order in which they were added. */
  all(): StoredJob[] {
    return [...this.#jobs.values()];
  }

  /** The job whose first blank carries this code, unless it is in the bin. */
  ownerOf(code: string): StoredJob | undefined {
    const id = this.#owners.get(code);
    return id === undefined ? undefined : this.#jobs.get(id);
  }

  /** The same of those in the bin. */
  binnedOwnerOf(code: string): StoredJob | undefined {
    const id = this.#owners.get(code);
    return id === undefined ? undefined : this.#bin.get(id);
  }

  /** A job in the bin. */
  getBinned(id: string): StoredJob | undefined {
    return this.#bin.get(id);
  }

  /** What is in the bin, what was put there last first. */
  bin(): StoredJob[] {
    return [...this.#bin.values()].sort((a, b) => binnedOf(b).localeCompare(binnedOf(a)));
  }

  /** How many jobs' documents there are, those in the bin among them. */
  get count(): number {
    return this.#jobs.size + this.#bin.size;
  }

  /** Saves a new job. Where its codes exist already it gets a fresh id. `seen` tells of ids that were used before and removed. */
  add(file: unknown, seen: (id: string) => boolean): Promise<Saved> {
    return this.#turns.take(async () => {
      const read = readJob(file);
      if (!read.ok) return { kind: 'faults', faults: read.faults };
      if (!isTree(file)) return { kind: 'unknown' };
      const profile = this.#profileFor(read.value.units);
      const added = this.#addedNow();
      let id = read.value.id;
      let codesChanged = false;
      for (;;) {
        if (!this.#jobs.has(id) && !this.#bin.has(id) && !seen(id)) {
          const opened = openJob({
            format: DOCUMENT_FORMAT,
            id,
            revision: 1,
            added,
            file: completeDefaults(file, builtInFields),
            profile,
            measured: {},
            asMarked: [],
            binned: null,
            history: [{ revision: 1, at: new Date().toISOString(), changes: [], more: 0 }],
          });
          if (!opened.ok) return { kind: 'faults', faults: opened.faults };
          if (!opened.value.summary.codes.some((code) => this.#owners.has(code))) {
            await this.#write(opened.value);
            return { kind: 'saved', stored: opened.value, codesChanged };
          }
        }
        codesChanged = true;
        id = `job-${randomBytes(5).toString('hex')}`;
      }
    });
  }

  /** Now, but after every other job, whatever a clock that was set back says: jobs stand in this order. */
  #addedNow(): string {
    const times = [...this.all(), ...this.bin()].map(({ document }) => Date.parse(document.added ?? ''));
    const last = times.reduce((most, time) => (time > most ? time : most), 0);
    return new Date(Math.max(Date.now(), last + 1)).toISOString();
  }

  /** Saves a changed job over the revision that the writer saw. Its id, and so its stickers' codes, stay. */
  update(id: string, revision: number, file: unknown, options: SaveOptions = {}): Promise<Changed> {
    return this.#change(id, revision, options, false, (before) => {
      const read = readJob(file);
      if (!read.ok) return read;
      if (!isTree(file)) return { ok: false, faults: [] };
      const { units } = read.value;
      const from = before.summary.units;
      const changes = {
        file: completeDefaults(file, builtInFields),
        measured: measuredOf(before, read.value),
      };
      const own = { ...changes, profile: before.document.profile };
      const kept =
        units === from && (before.faults.length === 0 || planDocument({ ...before.document, ...own }).ok);
      // Tools of the day where they must be others; what is running goes on in its ways.
      const { ways } = before.document.profile;
      const profile = { ...this.#profileFor(units), ...(ways === undefined ? {} : { ways }) };
      return { ok: true, value: kept ? own : { ...changes, profile } };
    });
  }

  /** Plans a job anew by sizes as they came out. Its file stays as it was written. */
  measure(
    id: string,
    revision: number,
    measured: Record<string, unknown>,
    options: SaveOptions = {},
  ): Promise<Changed> {
    return this.#change(id, revision, options, true, () => ({ ok: true, value: { measured } }));
  }

  /** Saves a job as it was at an earlier revision: its file, its tools, and its sizes as they came out then. */
  async goBack(id: string, revision: number, to: number, options: SaveOptions = {}): Promise<Changed> {
    const past = await this.#documents.readPast(id, to).catch(() => null);
    const current = this.#jobs.get(id)?.document.revision;
    if (current === undefined) return { kind: 'unknown' };
    if (past === null || to >= current) return { kind: 'no-revision' };
    const { file, profile, measured } = past;
    return this.#change(id, revision, { ...options, back: to }, false, () => ({
      ok: true,
      value: { file, profile, measured },
    }));
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

  /** What was marked by the plan of before and is set otherwise from now on is kept in the document: nothing else knows it. */
  #change(
    id: string,
    revision: number,
    { dry = false, by, back }: SaveOptions & { readonly back?: number },
    measuring: boolean,
    changes: (before: StoredJob) => Result<Changes>,
  ): Promise<Changed> {
    return this.#turns.take(async () => {
      const before = this.#jobs.get(id);
      if (before === undefined) return { kind: 'unknown' };
      if (before.document.revision !== revision) return { kind: 'stale', revision: before.document.revision };
      const changed = changes(before);
      if (!changed.ok) return { kind: 'faults', faults: changed.faults };
      const next = { ...before.document, ...changed.value };
      const note: RevisionNote = {
        revision: revision + 1,
        at: new Date().toISOString(),
        ...(by === undefined ? {} : { by }),
        ...(back === undefined ? {} : { back }),
        ...toldChanges(before.document, next),
      };
      const document = { ...next, revision: revision + 1, history: noted(before.document, note) };
      const opened = reopen(before, document, measuring);
      if (!opened.ok) return { kind: 'faults', faults: opened.faults };
      const progress = this.#progressOf(id);
      const asMarked = keepAsMarked(
        before.document.asMarked,
        livePlan(before.plan, progress),
        livePlan(opened.value.plan, progress),
        progress,
        measuring ? sizesIn(document) : null,
      );
      const stored = withAsMarked(opened.value, asMarked);
      if (!dry) {
        await this.#documents.keepPast(before.document);
        await this.#write(stored);
        const over = revision - MOST_PAST;
        if (over > 0) await this.#documents.dropPast(id, over).catch(() => undefined);
      }
      return { kind: 'changed', before, stored };
    });
  }

  /** Puts a job into the bin, with all that is kept of it, or takes it out again. False where there is none. */
  toBin(id: string): Promise<boolean> {
    return this.#turns.take(() => this.#move(this.#jobs.get(id), new Date().toISOString()));
  }

  fromBin(id: string): Promise<boolean> {
    return this.#turns.take(() => this.#move(this.#bin.get(id), null));
  }

  async #move(stored: StoredJob | undefined, binned: string | null): Promise<boolean> {
    if (stored === undefined) return false;
    const document = this.#kept.get(stored.document.id);
    if (document === undefined) throw new Error('every job has its document');
    const moved = withBinned(stored, binned);
    document.data = moved.document;
    try {
      await document.write();
    } catch (error) {
      document.data = stored.document;
      throw error;
    }
    this.#keep(moved, document);
    // One that comes back stands where it stood.
    if (binned === null)
      this.#jobs = new Map([...this.#jobs].sort(([, a], [, b]) => addedOf(a).localeCompare(addedOf(b))));
    return true;
  }

  /** Takes a job away for good, out of the bin too, after `before`. False where there is none. */
  remove(id: string, before: () => Promise<void> = () => Promise.resolve()): Promise<boolean> {
    return this.#turns.take(async () => {
      const stored = this.#jobs.get(id) ?? this.#bin.get(id);
      if (stored === undefined) return false;
      await before();
      await this.#documents.remove(id);
      this.#jobs.delete(id);
      this.#bin.delete(id);
      this.#kept.delete(id);
      for (const code of stored.summary.codes) this.#owners.delete(code);
      return true;
    });
  }

  async #write(stored: StoredJob): Promise<void> {
    const { id } = stored.document;
    if (stored.faults.length === 0) await this.#keepPlan(stored);
    const document = this.#kept.get(id) ?? (await this.#documents.begin(stored.document));
    document.data = stored.document;
    await document.write();
    this.#keep(stored, document);
  }

  async #keepPlan({ document, summary, plan }: StoredJob): Promise<void> {
    const madeOf = { hash: summary.hash, version: this.#version };
    await this.#documents.keepPlan(document.id, madeOf, plan);
  }

  #keep(stored: StoredJob, document: KeptDocument<JobDocument>): void {
    const { id } = stored.document;
    for (const code of this.#jobs.get(id)?.summary.codes ?? []) this.#owners.delete(code);
    const [into, outOf] = stored.document.binned === null ? [this.#jobs, this.#bin] : [this.#bin, this.#jobs];
    outOf.delete(id);
    into.set(id, stored);
    this.#kept.set(id, document);
    for (const code of stored.summary.codes) this.#owners.set(code, id);
  }
}

function toldChanges(before: JobDocument, after: JobDocument): Pick<RevisionNote, 'changes' | 'more'> {
  const { changes, more } = whatChanged(before, after);
  return { changes: [...changes], more };
}

/** The last saves with one more; the one before it stands there too, though nothing may be known of it. */
function noted({ revision, history }: JobDocument, note: RevisionNote): RevisionNote[] {
  const before =
    history.at(-1)?.revision === revision
      ? history
      : [...history, { revision, at: null, changes: [], more: 0 }];
  return [...before, note].slice(-MOST_PAST - 1);
}

/** What was measured of a job, in the units and of the sizes that it is changed to. */
function measuredOf({ document, summary }: StoredJob, now: Job): Tree {
  const before = readJob(convertJob(document.file, now.units));
  const measured = convertLengths(document.measured, summary.units, now.units);
  return followJob(measured, before.ok ? before.value : null, now);
}

/** The measured sizes of a document that has been planned by them. */
function sizesIn({ measured, file }: JobDocument): Measured {
  const read = readMeasured(measured, file.units === 'mm' ? 'mm' : 'in');
  return read.ok ? read.value : NOTHING_MEASURED;
}

function binnedOf({ document }: StoredJob): string {
  return `${document.binned ?? ''} ${document.id}`;
}

function addedOf({ document }: StoredJob): string {
  return `${document.added ?? ''} ${document.id}`;
}
