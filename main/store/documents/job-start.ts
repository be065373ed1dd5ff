import type { DocumentTrouble } from '../files/aside.ts';
import { wordsOf } from '../files/file-port.ts';
import { NewerFormat } from '../files/migration.ts';
import type { FoundDocument, JobDocuments } from '../journal.ts';
import { howMuchIn } from './how-much.ts';
import type { JobDocument } from './job-document.ts';
import { HELD_DOORS, type JobKeeper } from './job-keeper.ts';
import type { MadeJob } from './job-maker.ts';
import { addedOf, type JobShelf } from './job-shelf.ts';
import { hashOf } from './make-job.ts';
import { type PlanReader, StoredJob } from './stored-job.ts';

interface ReadJob extends FoundDocument<JobDocument> {
  readonly name: string;
  readonly hash: string;
  /** Null where its plan is still to be made. */
  readonly stored: StoredJob | null;
}

/** A kept plan that did not lie there as it was written: was it made anew, or can this version not make it? */
export interface Damaged {
  readonly job: string;
  readonly anew: boolean;
}

/** What reading the jobs needs of who holds them. */
export interface StartNeeds {
  readonly documents: JobDocuments;
  readonly version: string;
  readonly keeper: JobKeeper;
  readonly shelf: JobShelf;
  readonly closing: AbortSignal;
  /** Told of a job that was made ready after the start, and of a kept plan that was damaged. */
  readonly ready: (job: string) => void;
  readonly damaged: (damaged: Damaged) => void;
  /** Has the damaged plan of a job made anew. */
  readonly mend: (stored: StoredJob) => Promise<unknown>;
}

/** Reads the jobs from what is kept of them, and makes what is lacking. */
export class JobStart {
  readonly #need: StartNeeds;
  /** What was read and is not taken yet, and what could not be read. */
  readonly #read: ReadJob[] = [];
  readonly #unread: { readonly name: string; readonly error: unknown }[] = [];
  /** Jobs whose plan is being made since the start. */
  readonly #making = new Map<string, { readonly document: JobDocument; readonly made: Promise<void> }>();
  #writable = true;
  readonly troubles: DocumentTrouble[] = [];

  constructor(need: StartNeeds) {
    this.#need = need;
  }

  /** Can the folder be written in? */
  get writable(): boolean {
    return this.#writable;
  }

  /**
   * Reads every job's document; those whose plan this version has kept with its index are not planned. One from a newer
   * version stops the start. Nothing is written yet: gives the names of those in an older form.
   */
  async read(): Promise<string[]> {
    for (const name of await this.#need.documents.names()) {
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
    const found = await this.#need.documents.open(name);
    const document = found.document.data;
    const hash = hashOf(document);
    return { ...found, name, hash, stored: await this.#indexed(document, hash) };
  }

  /** A job by the index of its kept plan; null where that is to be made anew. */
  async #indexed(document: JobDocument, hash: string): Promise<StoredJob | null> {
    const { id } = document;
    const kept = await this.#need.documents.index(id, { hash, version: this.#need.version });
    if (kept === null) return null;
    const { index, plan } = kept;
    const reader: PlanReader = { slice: (from, to) => this.#need.documents.planSlice(id, plan, from, to) };
    if (index.head.doors > HELD_DOORS) {
      void this.#lookThrough(id, () => this.#need.documents.isAsKept(id, plan));
      return new StoredJob({ document, hash, index, lines: null, reader });
    }
    const whole = await this.#need.documents.isAsKept(id, plan);
    const lines = whole ? await this.#need.documents.lastPlan(id) : null;
    if (lines === null) {
      this.#need.damaged({ job: index.head.job, anew: true });
      return null;
    }
    return new StoredJob({ document, hash, index, lines, reader });
  }

  /** Looks through a large kept plan once the jobs are there; one that is damaged is made anew. */
  async #lookThrough(id: string, isWhole: () => Promise<boolean>): Promise<void> {
    await new Promise((later) => setTimeout(later, LOOK_AFTER_MS).unref());
    const stored = this.#need.shelf.get(id);
    if (stored === undefined || this.#need.closing.aborted) return;
    const whole = await isWhole().catch(() => true);
    if (!whole) await this.#need.mend(stored).catch(() => undefined);
  }

  /**
   * Takes what was read: what is no job's document is put aside and reported, one in an older form written in today's,
   * and each plan that is lacking made and kept beside its document; that of a large job while others are there already. A
   * job with faults is here like any other. Where the disk is not `writable` all is taken as it lies there.
   */
  async settle(writable = true): Promise<void> {
    this.#writable = writable;
    for (const { name, error } of this.#unread.splice(0))
      this.troubles.push(await this.#need.documents.putAside(name, error));
    const read = this.#read.splice(0);
    for (const { document, older } of read) if (writable && older) await document.write();
    for (const { stored, document } of read) if (stored !== null) this.#need.shelf.keep(stored, document);
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
          if (this.#need.shelf.get(id) !== undefined) this.#need.ready(id);
        });
    }
  }

  async #makeReady({ name, document }: ReadJob): Promise<void> {
    const { data } = document;
    try {
      const last = await this.#need.documents.lastPlan(data.id);
      const made = await this.#need.keeper.planned(data, last);
      const { damaged, stored } = await this.#keepMade(made, data, last);
      if (damaged) this.#need.damaged({ job: stored.summary.job, anew: false });
      this.#need.shelf.keep(stored, document);
    } catch (error) {
      if (this.#need.closing.aborted) return;
      // A large one may have needed more than there was: its document stays where it is, and the next start tries again.
      const large = howMuchIn(data.file).doors > HELD_DOORS;
      this.troubles.push(
        large
          ? { file: name, reason: wordsOf(error), kept: name }
          : await this.#need.documents.putAside(name, error),
      );
    } finally {
      this.#making.delete(data.id);
    }
  }

  /** Keeps a plan that was made of a document that stays as it is. `damaged`: there was one from before, and it cannot be read. */
  async #keepMade(
    made: MadeJob,
    document: JobDocument,
    last: Uint8Array | null,
  ): Promise<{ readonly stored: StoredJob; readonly damaged: boolean }> {
    const stored = await this.#need.keeper.withPlan(made, document, made.hash, this.#writable);
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
}

const LOOK_AFTER_MS = 500;
