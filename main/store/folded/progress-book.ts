import type { AcceptedMark, JobProgress } from '#core/marks/mark.ts';
import { applyMark, emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { isFinished } from '#core/marks/stage-state.ts';
import { Stretch } from '../files/stretch.ts';

/** The progress of one door, as an object, or as a snapshot's text until somebody asks for it. */
type Door = JobProgress | Buffer;

/**
 * The progress of all jobs, kept door by door, so that a mark costs the same whatever the size of its job. A door's
 * progress is core's JobProgress with that door's parts alone; a job's is all of its doors' together.
 */
export class ProgressBook {
  readonly #jobs = new Map<string, Map<string, Door>>();
  /** Whether a door is finished by a progress, which never changes. */
  readonly #finished = new WeakMap<Door, boolean>();
  #last = 0;

  /** Has anything ever happened in a job of this id? */
  has(job: string): boolean {
    return this.#jobs.has(job);
  }

  door(job: string, door: string): JobProgress {
    const doors = this.#jobs.get(job);
    const kept = doors?.get(door);
    if (kept === undefined) return emptyProgress(job);
    if (!Buffer.isBuffer(kept)) return kept;
    const progress = thawed(kept);
    doors?.set(door, progress);
    return progress;
  }

  /** The number of the last mark that is folded in, as far as doors were looked at. */
  get last(): number {
    return this.#last;
  }

  /** The doors of a job that have marks, one after another; only those that a mark after this number changed. */
  *marked(job: string, since = 0): Generator<readonly [door: string, progress: JobProgress]> {
    for (const [door, kept] of this.#jobs.get(job) ?? []) {
      // As text it is what it was at the start.
      if (!Buffer.isBuffer(kept)) {
        if (kept.seq > since) yield [door, kept];
      } else if (since === 0) yield [door, thawed(kept)];
    }
  }

  /** How many of those doors of a job are finished that are still in it; others get their turn while it is counted. */
  async finished(job: string, isIn: (door: string) => boolean): Promise<number> {
    const stretch = new Stretch();
    let count = 0;
    for (const [door, kept] of this.#jobs.get(job) ?? []) {
      let finished = this.#finished.get(kept);
      if (finished === undefined) {
        const progress = Buffer.isBuffer(kept) ? thawed(kept) : kept;
        this.#finished.set(kept, (finished = isFinished(progress, door)));
        await stretch.giveWay();
      }
      if (finished && isIn(door)) count += 1;
    }
    return count;
  }

  job(job: string): JobProgress {
    const doors = [...(this.#jobs.get(job)?.keys() ?? [])].map((door) => this.door(job, door));
    return {
      job,
      seq: doors.reduce((most, { seq }) => Math.max(most, seq), 0),
      parts: Object.fromEntries(doors.flatMap(({ parts }) => Object.entries(parts))),
      doors: Object.fromEntries(doors.flatMap((each) => Object.entries(each.doors))),
    };
  }

  /** Folds one more mark in, and gives its door's progress. */
  take(accepted: AcceptedMark): JobProgress {
    const after = applyMark(this.door(accepted.job, accepted.door), accepted);
    this.put(accepted.job, accepted.door, after);
    return after;
  }

  /** Folds a run of marks in: each door's tables are copied once. */
  takeAll(run: readonly AcceptedMark[]): void {
    const byJob = new Map<string, Map<string, AcceptedMark[]>>();
    for (const accepted of run) {
      let byDoor = byJob.get(accepted.job);
      if (byDoor === undefined) byJob.set(accepted.job, (byDoor = new Map<string, AcceptedMark[]>()));
      const marks = byDoor.get(accepted.door);
      if (marks === undefined) byDoor.set(accepted.door, [accepted]);
      else marks.push(accepted);
    }
    for (const [job, byDoor] of byJob)
      for (const [door, marks] of byDoor) this.put(job, door, foldMarks(this.door(job, door), marks));
  }

  put(job: string, door: string, progress: Door): void {
    const doors = this.#jobs.get(job) ?? new Map<string, Door>();
    this.#jobs.set(job, doors);
    doors.set(door, progress);
    if (!Buffer.isBuffer(progress)) this.#last = Math.max(this.#last, progress.seq);
  }

  /** Every door's progress, for a snapshot: objects here are never changed, so this stays true to its moment. */
  kept(): { readonly job: string; readonly door: string; readonly progress: Door }[] {
    return [...this.#jobs].flatMap(([job, doors]) =>
      [...doors].map(([door, progress]) => ({ job, door, progress })),
    );
  }
}

/** This program wrote it. */
function thawed(kept: Buffer): JobProgress {
  return JSON.parse(kept.toString('utf8')) as JobProgress;
}
