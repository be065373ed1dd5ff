import type { JobLine } from '#core/api/jobs-api.ts';
import { ask } from './client.ts';
import type { LiveJob } from './live-job.ts';
import { loadJob } from './load-job.ts';

/** What is known of the jobs already. */
export interface KnownJobs {
  readonly jobs: ReadonlyMap<string, LiveJob>;
  /** Finished ones that somebody asked for. */
  readonly asked: ReadonlySet<string>;
  /** Jobs whose plan or file is another one, or did not come; what is asked for is taken out. */
  readonly changed: Set<string>;
  /** Jobs of whose marks none was missed. */
  readonly sure: ReadonlySet<string>;
}

export interface LoadedJobs {
  /** Every job that the hub has, finished ones too. */
  readonly lines: readonly JobLine[];
  readonly tag: string | undefined;
  readonly jobs: ReadonlyMap<string, LiveJob>;
  /** Those of which it was asked what has happened. */
  readonly fresh: ReadonlySet<string>;
  readonly whole: boolean;
}

/** Asks for the list of jobs, for the plan of those that are new or changed, and for what happened where that is not known. Null where the list does not come. */
export async function loadJobs(
  known: KnownJobs,
  listed: (lines: readonly JobLine[]) => void,
): Promise<LoadedJobs | null> {
  const list = await ask('GET /jobs');
  if (list.kind !== 'ok') return null;
  const { jobs: lines, tag } = list.value;
  listed(lines);
  const jobs = new Map<string, LiveJob>();
  const fresh = new Set<string>();
  let whole = true;
  for (const line of lines) {
    const before = known.jobs.get(line.id);
    if (line.left === 0 && before === undefined && !known.asked.has(line.id)) continue;
    const same = before?.line.hash === line.hash && !known.changed.has(line.id);
    known.changed.delete(line.id);
    const progress = same && known.sure.has(line.id);
    const loaded = await loadJob(line, before, { plan: same, progress });
    if (!loaded.whole) {
      whole = false;
      known.changed.add(line.id);
    }
    if (loaded.job === null) continue;
    jobs.set(line.id, loaded.job);
    if (loaded.fresh) fresh.add(line.id);
  }
  return { lines, tag, jobs, fresh, whole };
}
