import type { JobDocument } from './documents/job-document.ts';
import type { JobIndex } from './documents/job-index.ts';
import type { KeptAs, MadeOf } from './documents/kept-plan.ts';
import type { PlanBytes } from './documents/plan-bytes.ts';
import type { ShopDocument } from './documents/shop-document.ts';
import type { DocumentTrouble } from './files/aside.ts';
import type { StoreTrouble } from './files/file-port.ts';

/**
 * What the store asks of whatever keeps a shop's data, by what it means: what happened, in numbered entries, and what
 * people write, in documents. Files keep both here: the log in log/, the documents in documents/.
 */
export interface Journal<Moment extends Answered = Answered> {
  readonly log: Entries<Moment>;
  readonly jobs: JobDocuments;
  readonly shop: ShopDocuments;
}

/** What becomes of an entry: exactly one of the two is called, in the order of the numbers. */
export interface Settle {
  readonly onDisk: () => void;
  readonly refused: (trouble: StoreTrouble) => void;
}

/** An entry as it was kept. */
export interface Numbered {
  readonly seq: number;
  readonly entry: unknown;
}

/** A moment of the log, told by the number of the last entry that was answered by then, and whatever its keeper needs beside it. */
export interface Answered {
  readonly seq: number;
}

/** What happened: entries come in one order, and none is changed or taken out again. */
export interface Entries<Moment extends Answered> {
  /**
   * Gives an entry the next number, at once, and keeps it. It is settled when no loss of power can undo it; once it was
   * refused, nothing of it and of those after it is kept, and their numbers are given out again.
   */
  append(entry: unknown, settle: Settle): number;
  /** The number of the last entry that was answered or is being written. */
  readonly lastSeq: number;
  /** Up to where everything is kept for good. */
  readonly answered: Moment;
  /** Why the last entries were refused; null when they were not. */
  readonly trouble: StoreTrouble | null;
  /** The entry of this number; null when it cannot be read. */
  entryAt(seq: number): Promise<unknown>;
  /**
   * Every answered entry after this number, in order, up to a moment (now). Reaches it or throws: a StoreTrouble when the
   * entries are no longer as they were answered, StoreBusy when other data took their place meanwhile.
   */
  from(after: number, to?: Moment): AsyncGenerator<Numbered>;
  /** The number of the last entry up to a moment that can be read; 0 when there is none. */
  lastEntry(to: Moment): Promise<number>;
  /** The next entries get numbers after this one. */
  goOnFrom(seq: number): void;
  /** Other data are about to take the place of these: whoever still reads them is told so, and gets no more. */
  retire(): void;
  /** Waits for what is being written, then closes. */
  close(): Promise<void>;
}

/** A document that people write. What is put into `data` is kept, whole and for good, once `write` has settled. */
export interface KeptDocument<T> {
  data: T;
  write(): Promise<void>;
}

/** A document as it was found. */
export interface FoundDocument<T> {
  readonly document: KeptDocument<T>;
  /** It lies there in an older form; it was read in today's, and nothing was written. */
  readonly older: boolean;
}

/** The jobs' documents, one for each, and the last plan of each. */
export interface JobDocuments {
  /** The names of all there are. */
  names(): Promise<readonly string[]>;
  /** Reads one of them in today's form. Throws NewerFormat, or what is wrong with it. */
  open(name: string): Promise<FoundDocument<JobDocument>>;
  /** Puts one that cannot be read where it stays whole and is not found by its name any more. */
  putAside(name: string, error: unknown): Promise<DocumentTrouble>;
  /** A document for a new job: there once it is written. */
  begin(document: JobDocument): Promise<KeptDocument<JobDocument>>;
  /** Takes away a job's document and its last plan; settles when they are gone for good. */
  remove(id: string): Promise<void>;
  /** The earlier revisions that are kept of a job, the newest first. */
  past(id: string): Promise<readonly number[]>;
  /** One of them; null where it is not kept. Throws what is wrong with it. */
  readPast(id: string, revision: number): Promise<JobDocument | null>;
  /** Keeps a job's document as it is now, for the day when somebody goes back to it. */
  keepPast(document: JobDocument): Promise<void>;
  dropPast(id: string, revision: number): Promise<void>;
  /** The packed lines of the last plan that was kept of a job; null where there is none. */
  lastPlan(id: string): Promise<Uint8Array | null>;
  /** Keeps the plan of a job and its index, each whole or not at all. */
  keepPlan(id: string, madeOf: MadeOf, plan: PlanBytes): Promise<KeptAs>;
  /** The index of a kept plan that was made of just this, and how that plan was written; null where there is none, or none that can be read. */
  index(id: string, madeOf: MadeOf): Promise<{ readonly index: JobIndex; readonly plan: KeptAs } | null>;
  /** Does the kept plan lie there as it was written? Reads all of it, others in between. */
  isAsKept(id: string, plan: KeptAs): Promise<boolean>;
  /** Packed lines of a kept plan, from one place up to another. */
  planSlice(id: string, plan: KeptAs, from: number, to: number): Promise<Uint8Array>;
}

/** The shop's one document. */
export interface ShopDocuments {
  /** Reads it in today's form; `fresh` where there is none. Throws NewerFormat, or what is wrong with it. */
  open(fresh: ShopDocument): Promise<FoundDocument<ShopDocument>>;
  /** Puts one that cannot be read where it stays whole; from then on there is none. */
  putAside(error: unknown): Promise<DocumentTrouble>;
}
