import type { KeptDocument } from '../journal.ts';
import type { JobDocument } from './job-document.ts';
import type { StoredJob } from './stored-job.ts';

/** The jobs that the hub holds, in the order in which they were added, and those in the bin. */
export class JobShelf {
  #jobs = new Map<string, StoredJob>();
  readonly #bin = new Map<string, StoredJob>();
  readonly #documents = new Map<string, KeptDocument<JobDocument>>();

  get(id: string): StoredJob | undefined {
    return this.#jobs.get(id);
  }

  getBinned(id: string): StoredJob | undefined {
    return this.#bin.get(id);
  }

  document(id: string): KeptDocument<JobDocument> | undefined {
    return this.#documents.get(id);
  }

  /** In the order in which they were added. */
  all(): StoredJob[] {
    return [...this.#jobs.values()];
  }

  /** What is in the bin, what was put there last first. */
  bin(): StoredJob[] {
    return [...this.#bin.values()].sort((a, b) => binnedOf(b).localeCompare(binnedOf(a)));
  }

  get count(): number {
    return this.#jobs.size + this.#bin.size;
  }

  /** The job whose first blank carries this code, unless it is in the bin. */
  ownerOf(code: string): StoredJob | undefined {
    return ownerAmong(this.#jobs, code);
  }

  binnedOwnerOf(code: string): StoredJob | undefined {
    return ownerAmong(this.#bin, code);
  }

  /** Is a code of this one taken by another job, in the bin or not? */
  sharesCode(stored: StoredJob): boolean {
    return [...this.#jobs.values(), ...this.#bin.values()].some(({ index }) => index.shares(stored.index));
  }

  /** Puts a job where it belongs, in place of what was known of it. */
  keep(stored: StoredJob, document: KeptDocument<JobDocument>): void {
    const { id } = stored.document;
    const [into, outOf] = stored.document.binned === null ? [this.#jobs, this.#bin] : [this.#bin, this.#jobs];
    outOf.delete(id);
    const last = [...this.#jobs.values()].at(-1);
    const isNew = !into.has(id);
    into.set(id, stored);
    this.#documents.set(id, document);
    // One that comes back, or was made ready late, stands where it stood.
    if (isNew && last !== undefined && addedOf(last.document).localeCompare(addedOf(stored.document)) > 0)
      this.#jobs = new Map(
        [...this.#jobs].sort(([, a], [, b]) => addedOf(a.document).localeCompare(addedOf(b.document))),
      );
  }

  drop(id: string): void {
    this.#jobs.delete(id);
    this.#bin.delete(id);
    this.#documents.delete(id);
  }
}

function ownerAmong(jobs: ReadonlyMap<string, StoredJob>, code: string): StoredJob | undefined {
  for (const stored of jobs.values()) if (stored.index.find(code) !== null) return stored;
  return undefined;
}

function binnedOf({ document }: StoredJob): string {
  return `${document.binned ?? ''} ${document.id}`;
}

/** Jobs stand in the order of this. */
export function addedOf({ added, id }: JobDocument): string {
  return `${added ?? ''} ${id}`;
}
