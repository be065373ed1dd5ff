import { PassThrough, type Readable } from 'node:stream';
import { once } from 'node:events';
import { spokenNow } from '#core/words/say.ts';
import { here } from './here.ts';
import { HELD_DOORS } from '../store/documents/job-keeper.ts';
import type { HowMuch, JobMaker, Make, MakeKind, Makes } from '../store/documents/job-maker.ts';
import { makeJob } from '../store/documents/make-job.ts';
import { Lane, NotWanted } from './lane.ts';
import type { Task, TaskKind, Tasks, Telling } from './tasks.ts';
import { Thread } from './thread.ts';

/** A job of more doors is large: its papers are made one at a time, and nothing else waits for them. */
export const MANY_DOORS = HELD_DOORS;

/** So few marks are planned in the hub's own thread: sooner than another thread is there. */
const FEW_MARKS = 4;

/** Is this job planned in the hub's own thread? */
export function isSmall({ doors, marks }: Pick<HowMuch, 'doors' | 'marks'>): boolean {
  return doors <= MANY_DOORS && marks <= FEW_MARKS;
}

/**
 * How long a thread stays: other answers of the same plan come soon, other papers do not. A page that is left takes its
 * questions back, and the next one asks the same: a thread that was ended at once for that would first have to be made anew,
 * behind everything else, and to plan once more.
 */
const ANSWERS_STAY = { idle: 20_000, unwanted: 2000 };
const PAPERS_STAY = { idle: 500, unwanted: 0 };

export interface How {
  /** Of how many doors it is made. */
  readonly doors: number;
  readonly signal: AbortSignal;
}

const NOTHING_TOLD: Telling = { piece: () => Promise.resolve(), progress: () => Promise.resolve() };

/**
 * Where the hub has made what takes its time: jobs that are saved, plans to be answered, reasons, stickers and papers.
 * Threads do it: one the large papers one after another, one the large jobs that are saved, one all the rest; what is not
 * wanted any more ends at once.
 */
export class WorkDesk implements JobMaker {
  readonly #large: Lane;
  readonly #saves: Lane;
  readonly #rest: Lane;

  /** `entry` is the built file of a thread; without one all is done in this thread. */
  constructor(entry: string | null) {
    const open = () => (entry === null ? here() : new Thread(entry));
    this.#large = new Lane(open, PAPERS_STAY);
    this.#saves = new Lane(open, PAPERS_STAY);
    this.#rest = new Lane(open, ANSWERS_STAY);
  }

  /** Does a task; rejects with NotWanted once it is aborted. */
  async make<K extends TaskKind>(
    task: Task<K>,
    { doors, signal }: How,
    telling: Partial<Telling> = {},
  ): Promise<Tasks[K]['gives']> {
    // One of a kind is one of all, which its type does not say; and what it gives hangs on its kind.
    const one = task as unknown as Task;
    const answers = one.kind === 'plan' || one.kind === 'door' || one.kind === 'doors';
    const lane = doors > MANY_DOORS && !answers ? this.#large : this.#rest;
    const given = await lane.take(signal, (bench) =>
      bench.do(one, spokenNow(), { ...NOTHING_TOLD, ...telling }),
    );
    return given;
  }

  /** Plans a job, and what else is to be reckoned where it is saved. */
  async makeJob<K extends MakeKind>(
    asked: Make<K>,
    { doors, marks, signal }: HowMuch,
  ): Promise<Makes[K]['gives']> {
    if (isSmall({ doors, marks })) return makeJob(asked);
    const lane = doors > MANY_DOORS ? this.#saves : this.#rest;
    const task = { kind: 'job', asked } as unknown as Task;
    const given = await lane.take(signal ?? new AbortController().signal, (bench) =>
      bench.do(task, spokenNow(), NOTHING_TOLD),
    );
    // What comes of a task hangs on its kind, which its type does not say.
    return given as Makes[K]['gives'];
  }

  /** An answer as it comes, at the pace at which it is read. */
  stream(task: Task<'plan' | 'door' | 'doors'>, how: How): Readable {
    const out = new PassThrough();
    const piece = async (bytes: Uint8Array) => {
      // What nobody reads any more is made to its end all the same, as long as that may take.
      if (how.signal.aborted || out.write(bytes)) return;
      await once(out, 'drain', { signal: how.signal }).catch(() => undefined);
    };
    how.signal.addEventListener('abort', () => out.destroy(new NotWanted()), { once: true });
    this.make(task, how, { piece }).then(
      () => out.end(),
      (error: unknown) => out.destroy(error instanceof Error ? error : new Error(String(error))),
    );
    return out;
  }

  /** Gives up all of it. */
  async close(): Promise<void> {
    await Promise.all([this.#large.close(), this.#saves.close(), this.#rest.close()]);
  }
}
