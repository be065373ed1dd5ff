import { z } from 'zod';
import { asMarked, type JobLine, jobsAnswer } from '#core/api/jobs-api.ts';
import { planAnswer } from '#core/api/plan-api.ts';
import { jobProgress } from '#core/api/marks-api.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import type { AsMarked } from '#core/measured/as-marked.ts';
import type { Plan } from '#core/plan/plan.ts';
import { OwnDatabase } from './own-database.ts';

/** A job as it was when the hub was last here. */
export interface KeptJob {
  readonly line: JobLine;
  readonly plan: Plan;
  /** The job file. */
  readonly file: unknown;
  /** Settings that something was marked by and that are others since. */
  readonly asMarked?: readonly AsMarked[] | undefined;
  readonly progress: JobProgress;
  /** It is in the bin: kept so that its stickers are known for what they are. */
  readonly binned?: true | undefined;
}

const PLANS = 'plans';
const PROGRESS = 'progress';
const idKept = z.object({ id: z.string() }).transform(({ id }) => id);
const planKept = z.object({
  id: z.string(),
  line: jobsAnswer.shape.jobs.element,
  plan: planAnswer,
  file: z.unknown(),
  asMarked: z.array(asMarked).optional(),
  binned: z.literal(true).optional(),
});
const progressKept = z.object({ job: z.string(), progress: jobProgress });

/**
 * Where a screen keeps the current jobs, so that it can be loaded anew while the hub is away. Only a copy of what the hub
 * said: losing it loses nothing, so it is written without waiting for the disk.
 */
export class KeptJobs {
  readonly #database: OwnDatabase;
  /** What was last written of each job: the same object is not written again. */
  readonly #written = new Map<string, KeptJob>();

  constructor(name = 'shoulderline-jobs', factory?: IDBFactory) {
    this.#database = new OwnDatabase(
      name,
      (database) => {
        database.createObjectStore(PLANS, { keyPath: 'id' });
        database.createObjectStore(PROGRESS, { keyPath: 'job' });
      },
      factory,
    );
  }

  /** Keeps these jobs and no others. */
  async keep(jobs: readonly KeptJob[]): Promise<void> {
    const transaction = await this.#database.begin([PLANS, PROGRESS], 'readwrite');
    const plans = transaction.objectStore(PLANS);
    const progresses = transaction.objectStore(PROGRESS);
    const current = new Set(jobs.map(({ line }) => line.id));
    for (const store of [plans, progresses])
      store.getAllKeys().onsuccess = ({ target }) => {
        for (const key of (target as IDBRequest<IDBValidKey[]>).result)
          if (typeof key !== 'string' || !current.has(key)) store.delete(key);
      };
    for (const { line, plan, file, asMarked: kept, progress, binned } of jobs) {
      const before = this.#written.get(line.id);
      if (before?.plan !== plan || before.line.revision !== line.revision || before.binned !== binned)
        plans.put({ id: line.id, line, plan, file, asMarked: kept, ...(binned === true ? { binned } : {}) });
      if (before?.progress !== progress) progresses.put({ job: line.id, progress });
    }
    await settled(transaction);
    this.#written.clear();
    for (const job of jobs) this.#written.set(job.line.id, job);
  }

  /** Every kept job but those that are known. What cannot be read, after a change of version perhaps, is passed over. */
  async all(known: ReadonlySet<string> = new Set()): Promise<KeptJob[]> {
    const transaction = await this.#database.begin([PLANS, PROGRESS], 'readonly');
    const plans = transaction.objectStore(PLANS).getAll();
    const progresses = transaction.objectStore(PROGRESS).getAll();
    await settled(transaction);
    const reached = new Map(
      progresses.result.flatMap((each: unknown) => {
        const read = progressKept.safeParse(each);
        return read.success ? [[read.data.job, read.data.progress] as const] : [];
      }),
    );
    return plans.result.flatMap((each: unknown) => {
      const { data: id = '' } = idKept.safeParse(each);
      if (known.has(id)) return [];
      const read = planKept.safeParse(each);
      const progress = read.success ? reached.get(read.data.id) : undefined;
      if (!read.success || progress === undefined) return [];
      const { line, plan, file, asMarked: kept, binned } = read.data;
      return [{ line, plan, file, asMarked: kept, progress, ...(binned === true ? { binned } : {}) }];
    });
  }
}

function settled(transaction: IDBTransaction): Promise<void> {
  return new Promise((done, failed) => {
    transaction.oncomplete = () => done();
    transaction.onabort = () => failed(transaction.error ?? new Error('the database did not take it'));
  });
}
