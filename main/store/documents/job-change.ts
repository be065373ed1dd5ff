import type { Fault } from '#core/fields/fault.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import { Stretch } from '../files/stretch.ts';
import type { JobDocuments } from '../journal.ts';
import { howMuchIn } from './how-much.ts';
import { MOST_PAST, readJobDocument } from './job-document.ts';
import { inMemory, type JobKeeper } from './job-keeper.ts';
import type { Change, Comes, JobMaker, Profiles } from './job-maker.ts';
import type { JobShelf } from './job-shelf.ts';
import { digestOf } from './progress-digest.ts';
import type { StoredJob } from './stored-job.ts';

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

/** What a change of a job needs of who holds it. */
export interface ChangeNeeds {
  readonly documents: JobDocuments;
  readonly keeper: JobKeeper;
  readonly shelf: JobShelf;
  readonly maker: JobMaker;
  readonly profiles: () => Profiles;
  readonly marks: JobMarks;
  /** Holds the marks of a job back; gives what lets them go on. */
  readonly holdMarks: (job: string) => Promise<() => void>;
}

/** The marks, as far as saving a job has to do with them. */
export interface JobMarks {
  /** The number of the last mark. */
  readonly last: () => number;
  /** The doors of a job that have marks; only those that have some after a number. */
  readonly of: (job: string, since: number) => Iterable<readonly [door: string, progress: JobProgress]>;
}

/** Saves a job that is there already otherwise than it was. One at a time for each job: who calls sees to that. */
export class JobChanges {
  readonly #need: ChangeNeeds;

  constructor(need: ChangeNeeds) {
    this.#need = need;
  }

  /**
   * What was marked by the plan of before and is set otherwise from now on is kept in the document: nothing else knows it.
   * Marks go on being judged by the old plan while the new one is made; for as long as it is put in place they wait, and
   * those that came meanwhile are looked at first. So each is judged by the one or the other.
   */
  async make(
    id: string,
    revision: number,
    { dry = false, by, signal }: SaveOptions,
    change: Change,
    how: { readonly doors: number; readonly marks: number },
  ): Promise<Changed> {
    const { documents, keeper, shelf, maker, profiles, marks, holdMarks } = this.#need;
    const before = shelf.get(id);
    if (before === undefined) return { kind: 'unknown' };
    if (before.document.revision !== revision) return { kind: 'stale', revision: before.document.revision };
    const old = howMuchIn(before.document.file);
    const much = {
      doors: Math.max(how.doors, old.doors),
      marks: Math.max(how.marks, old.marks),
      signal,
    };
    const since = marks.last();
    const text = JSON.stringify(before.document);
    const last = lastOf(before);
    const made = await maker.makeJob(
      {
        make: 'change',
        before: text,
        last,
        change,
        at: new Date().toISOString(),
        by,
        profiles: profiles(),
        progress: await this.#digest(id, 0),
      },
      much,
    );
    if (!made.ok) return { kind: 'faults', faults: made.faults };
    const { parts, comes } = made;
    const bare = readJobDocument(made.document);
    if (dry) return { kind: 'changed', before, stored: inMemory(made, bare, made.hash), parts, comes };
    const release = await holdMarks(id);
    try {
      const progress = await this.#digest(id, since);
      const late =
        progress === ''
          ? null
          : await maker.makeJob(
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
      await documents.keepPast(before.document);
      const stored = await keeper.write(made, document, late?.hash ?? made.hash);
      const over = revision - MOST_PAST;
      if (over > 0) await documents.dropPast(id, over).catch(() => undefined);
      return { kind: 'changed', before, stored, parts, comes };
    } finally {
      release();
    }
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
}

/** The lines of the plan that a job with faults shows, for who makes another of it. */
function lastOf({ faults, anyway, lines }: StoredJob): Uint8Array | null {
  return faults.length === 0 || anyway ? null : lines;
}
