import { wordsOf } from '../files/file-port.ts';
import type { JobDocuments } from '../journal.ts';
import { howMuchIn } from './how-much.ts';
import type { JobDocument } from './job-document.ts';
import { JobIndex } from './job-index.ts';
import type { JobMaker, MadeJob } from './job-maker.ts';
import type { JobShelf } from './job-shelf.ts';
import { type PlanReader, StoredJob } from './stored-job.ts';

/** A job of more doors is large: its plan is read from its file a door at a time, and nobody waits for it at the start. */
export const HELD_DOORS = 200;

/** Writes jobs down, document and plan, and puts them on the shelf. */
export class JobKeeper {
  readonly #documents: JobDocuments;
  /** Of the program: kept with the plans that it makes. */
  readonly #version: string;
  readonly #maker: JobMaker;
  readonly #shelf: JobShelf;
  readonly #closing: AbortSignal;
  /** Jobs whose plan could not be kept; a later start tries again. */
  readonly unkept: { readonly job: string; readonly reason: string }[] = [];

  constructor(
    documents: JobDocuments,
    version: string,
    maker: JobMaker,
    shelf: JobShelf,
    closing: AbortSignal,
  ) {
    this.#documents = documents;
    this.#version = version;
    this.#maker = maker;
    this.#shelf = shelf;
    this.#closing = closing;
  }

  /** The plan of a document that stays as it is; `last` are the lines that it showed before. */
  planned(document: JobDocument, last: Uint8Array | null): Promise<MadeJob> {
    return this.#maker.makeJob(
      { make: 'plan', document: JSON.stringify(document), last },
      { ...howMuchIn(document.file), signal: this.#closing },
    );
  }

  /** Writes a job down and puts it in place. Its plan comes second: where that cannot be kept, it stays in memory. */
  async write(made: MadeJob, data: JobDocument, hash: string): Promise<StoredJob> {
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
    const stored = await this.withPlan(made, data, hash, true);
    this.#shelf.keep(stored, document);
    return stored;
  }

  /** A job with the plan that was made of it, kept beside its document where this version makes it itself. */
  async withPlan(made: MadeJob, document: JobDocument, hash: string, write: boolean): Promise<StoredJob> {
    if (!write || made.faults.length > 0) return inMemory(made, document, hash);
    const { id } = document;
    try {
      const kept = await this.#documents.keepPlan(id, { hash, version: this.#version }, made.plan);
      return storedOf(made, document, hash, {
        slice: (from, to) => this.#documents.planSlice(id, kept, from, to),
      });
    } catch (error) {
      this.unkept.push({ job: id, reason: wordsOf(error) });
      return inMemory(made, document, hash);
    }
  }
}

/** A job as it was made, its lines in memory: it is kept nowhere yet, or cannot be. */
export function inMemory(made: MadeJob, document: JobDocument, hash: string): StoredJob {
  return storedOf(made, document, hash, null);
}

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
