import { ask } from './client.ts';
import type { KeptJob, KeptJobs } from './kept-jobs.ts';
import { knowsCode, liveAgain, type LiveJob } from './live-job.ts';

/** A browser's database that does not answer keeps nobody from loading the jobs; then its copy is done without. */
const PATIENCE_MS = 3000;

/** Jobs that this screen knew and the hub lists no more; those in the bin stay known by their stickers. */
export class GoneJobs {
  readonly #keptJobs: Pick<KeptJobs, 'all'>;
  #gone: ReadonlyMap<string, LiveJob> = new Map();
  #binned: ReadonlySet<string> = new Set();
  #keptRead = false;

  constructor(keptJobs: Pick<KeptJobs, 'all'>) {
    this.#keptJobs = keptJobs;
  }

  /** Those in the bin, as far as is known. */
  get binned(): readonly LiveJob[] {
    return [...this.#gone].flatMap(([id, job]) => (this.#binned.has(id) ? [job] : []));
  }

  /** Takes these for what lies in the bin: the hub is away. */
  take(binned: readonly LiveJob[]): void {
    this.#gone = new Map(binned.map((job) => [job.line.id, job]));
    this.#binned = new Set(this.#gone.keys());
  }

  /** Which of the jobs that were known and are not listed any more are in the bin? False where the hub did not say. */
  async look(listed: ReadonlySet<string>, before: ReadonlyMap<string, LiveJob>): Promise<boolean> {
    const known = [...this.#gone, ...before];
    if (!this.#keptRead) {
      const late = new Promise<KeptJob[]>((given) => setTimeout(() => given([]), PATIENCE_MS));
      const kept = await Promise.race([late, this.#keptJobs.all(listed).catch(() => [])]);
      known.unshift(...kept.map((each): [string, LiveJob] => [each.line.id, liveAgain(each)]));
      this.#keptRead = true;
    }
    const gone = new Map(known.filter(([id]) => !listed.has(id)));
    this.#gone = gone;
    if (gone.size === 0) return true;
    const bin = await ask('GET /bin');
    if (bin.kind !== 'ok') return false;
    this.#binned = new Set(bin.value.jobs.map(({ id }) => id));
    this.#gone = new Map([...gone].filter(([id]) => this.#binned.has(id)));
    return true;
  }

  /** Is a job in the bin that this code stands or stood in? */
  has(code: string): boolean {
    return this.binned.some((job) => knowsCode(job, code));
  }
}
