import type { AcceptedMark } from '#core/marks/mark.ts';
import { foldMarks, own } from '#core/marks/progress.ts';
import type { Kept } from './kept-marks.ts';
import type { LiveJob } from './live-job.ts';

/** A mark of this screen, shown before the hub's own event of it has come; `taken` once the hub has answered it, with the code that it gave to a spoiled blank's replacement. */
export interface Ahead {
  readonly kept: Kept;
  readonly taken: boolean;
  readonly replacement?: string | undefined;
}

/** This screen's own marks that are ahead of what the hub has told. */
export class AheadMarks {
  #all: readonly Ahead[] = [];
  readonly #changed: (jobs: ReadonlySet<string>) => void;

  /** `changed` is told which jobs are to be shown anew. */
  constructor(changed: (jobs: ReadonlySet<string>) => void) {
    this.#changed = changed;
  }

  shown(kept: Kept): void {
    this.#set([...this.#all, { kept, taken: false }]);
  }

  taken(id: string, replacement: string | undefined): void {
    this.#set(
      this.#all.map((each) => (each.kept.mark.id === id ? { ...each, taken: true, replacement } : each)),
    );
  }

  dropped(id: string): void {
    this.#set(this.#all.filter(({ kept }) => kept.mark.id !== id));
  }

  /** Those that the hub has answered until now: whatever it is asked for from here on has them. */
  answered(): ReadonlySet<Ahead> {
    return new Set(this.#all.filter(({ taken }) => taken));
  }

  /** The job of a mark that is ahead still. */
  jobOf(id: string): string | undefined {
    return this.#all.find(({ kept }) => kept.mark.id === id)?.kept.job;
  }

  /** What the hub has told has these in it; whoever calls it shows the jobs anew. */
  caughtUp(known: (ahead: Ahead) => boolean): void {
    this.#all = this.#all.filter((each) => !known(each));
  }

  /**
   * A job with these marks on top, numbered after all that the screen knows (`known`): numbers count over all jobs, and what
   * this screen did is the latest of all. A spoiled blank's replacement is the hub's to name, so that waits for its answer.
   */
  on(job: LiveJob, known: number): LiveJob {
    const mine = this.#all.filter(
      ({ kept, replacement }) =>
        kept.job === job.line.id && (kept.mark.mark !== 'spoiled' || replacement !== undefined),
    );
    const from = Math.max(known, job.confirmed.seq) + 1;
    const marks = mine.map(({ kept: { mark, door, part }, replacement }, k): AcceptedMark => ({
      seq: from + k,
      received: mark.at,
      job: job.line.id,
      door,
      part,
      mark,
      ...(replacement === undefined
        ? {}
        : {
            replacement: {
              code: replacement,
              number: (own(job.confirmed.parts, mark.code)?.number ?? 0) + 1,
            },
          }),
    }));
    return { ...job, progress: marks.length === 0 ? job.confirmed : foldMarks(job.confirmed, marks) };
  }

  #set(all: readonly Ahead[]): void {
    const touched = new Set([...this.#all, ...all].map(({ kept }) => kept.job));
    this.#all = all;
    this.#changed(touched);
  }
}
