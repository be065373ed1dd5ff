import type { Missing } from '#core/marks/stage-state.ts';
import { judgeMark } from '#core/marks/judge-mark.ts';
import type { AcceptedMark, JobProgress, Mark, Refusal } from '#core/marks/mark.ts';
import { applyMark } from '#core/marks/progress.ts';
import { acceptMark, contentOf } from './folded/accept-mark.ts';
import { rememberMark } from './folded/entry-fold.ts';
import { LOG_FORMAT, type LogEntry, readEntry } from './log/log-entry.ts';
import type { Journal } from './journal.ts';
import type { OpenFolder } from './open-folder.ts';
import { progressAt } from './folded/progress-at.ts';
import type { StoredJob } from './documents/stored-job.ts';

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
      readonly missing?: readonly Missing[];
      readonly figures?: Readonly<Record<string, string>>;
    };

/** What the desk needs of the store whose marks it takes. */
interface DeskOf {
  readonly open: () => Pick<OpenFolder, 'jobs' | 'folded'> & Pick<Journal, 'log'>;
  /** Throws while nothing is taken. */
  readonly admit: () => void;
  /** Told of each mark that is on disk now. */
  readonly onDisk: (accepted: AcceptedMark) => void;
}

/** Where marks come in: each is judged against all before it, written down, flushed, and only then answered. */
export class MarkDesk {
  readonly #store: DeskOf;
  /** Progress of doors with what is still being written. New marks are judged by this; screens see what is on disk. */
  readonly #pending = new Map<string, JobProgress>();
  /** Marks that are being written, by id. */
  readonly #flying = new Map<
    string,
    { readonly job: string; readonly content: string; readonly outcome: Promise<Marked> }
  >();
  /** Jobs whose marks wait, each until what judges them is in place. */
  readonly #held = new Map<string, Promise<void>>();

  constructor(store: DeskOf) {
    this.#store = store;
  }

  /** Takes a mark; the same id, in whatever case, with the same content answers as before. */
  async take(given: Mark): Promise<Marked> {
    const mark = withId(given, given.id.toLowerCase());
    const flying = this.#flying.get(mark.id);
    if (flying !== undefined)
      return flying.content === contentOf(mark) ? flying.outcome : { ok: false, code: 'id-reused' };
    const seq = this.#store.open().folded.ids.find(mark.id);
    if (seq !== undefined) return this.#again(seq, mark);
    const whose = whoseCode(this.#store.open(), mark.code);
    if (whose === null && this.#store.open().jobs.notReady.length > 0) {
      await this.#store.open().jobs.ready();
      return this.take(given);
    }
    if (whose === null)
      return {
        ok: false,
        code: binnedOwner(this.#store.open(), mark.code) === null ? 'unknown-code' : 'binned',
      };
    const { stored, door } = whose;
    const job = stored.document.id;
    const held = this.#held.get(job);
    if (held !== undefined) {
      await held;
      return this.take(given);
    }
    const key = `${job}\n${door}`;
    const before = this.#pending.get(key) ?? this.#store.open().folded.book.door(job, door);
    const judged = judgeMark(stored.index.locate(before, mark.code), before, mark);
    if (!judged.ok) return judged;
    this.#store.admit();
    const outcome = this.#write(stored, key, before, acceptMark(stored, before, mark, judged));
    this.#flying.set(mark.id, { job, content: contentOf(mark), outcome });
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
    const { log, folded } = this.#store.open();
    return new Promise<Marked>((done, failed) => {
      const seq = log.append({ kind: 'mark', mark: unnumbered } satisfies LogEntry, {
        onDisk: () => {
          const progress = folded.book.take(accepted);
          rememberMark(folded, accepted);
          if (this.#pending.get(key)?.seq === seq) this.#pending.delete(key);
          this.#store.onDisk(accepted);
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

  /** What the answer to this id was: the same again if the content is the same. */
  async #again(seq: number, mark: Mark): Promise<Marked> {
    const { log, jobs, folded } = this.#store.open();
    const entry = readEntry(await log.entryAt(seq), LOG_FORMAT);
    if (entry?.kind !== 'mark' || contentOf(entry.mark.mark) !== contentOf(mark))
      return { ok: false, code: 'id-reused' };
    const accepted: AcceptedMark = { seq, ...entry.mark };
    // It was answered while its job was there: that holds, though the job is in the bin by now.
    const stored = jobs.get(accepted.job) ?? jobs.getBinned(accepted.job);
    if (stored === undefined) return { ok: false, code: 'unknown-code' };
    const now = folded.book.door(accepted.job, accepted.door);
    return { ok: true, accepted, stored, progress: progressAt(now, accepted) };
  }

  /** From when this settles no mark of a job is on its way, and new ones wait until what it gives is called. One at a time for a job. */
  async hold(job: string): Promise<() => void> {
    let release: () => void = () => undefined;
    this.#held.set(job, new Promise<void>((done) => (release = done)));
    const flying = [...this.#flying.values()].filter((each) => each.job === job);
    await Promise.allSettled(flying.map(({ outcome }) => outcome));
    return () => {
      this.#held.delete(job);
      release();
    };
  }

  /** Forgets what was being written: other data were put in place. */
  forget(): void {
    this.#pending.clear();
  }
}

/** A uuid is one number, however its digits are written: from here on they are small. */
function withId(mark: Mark, id: string): Mark {
  return mark.id === id ? mark : { ...mark, id };
}

/** The job and the door of a code: of a part in a plan, or of one that took its place. */
export function whoseCode(
  { jobs, folded }: Pick<OpenFolder, 'jobs' | 'folded'>,
  code: string,
): { readonly stored: StoredJob; readonly door: string } | null {
  const owner = jobs.ownerOf(code);
  const first = owner?.index.find(code) ?? null;
  if (owner !== undefined && first !== null) return { stored: owner, door: owner.index.doorName(first.door) };
  const replaced = folded.replacements.get(code);
  const stored = replaced === undefined ? undefined : jobs.get(replaced.job);
  return replaced === undefined || stored === undefined ? null : { stored, door: replaced.door };
}

/** The job in the bin that a code belongs to, of a part in its plan or of one that took its place; null where there is none. */
export function binnedOwner(
  { jobs, folded }: Pick<OpenFolder, 'jobs' | 'folded'>,
  code: string,
): StoredJob | null {
  const replaced = folded.replacements.get(code);
  return (
    jobs.binnedOwnerOf(code) ?? (replaced === undefined ? undefined : jobs.getBinned(replaced.job)) ?? null
  );
}
