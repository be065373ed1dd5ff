import { acceptedMark } from '#core/api/marks-api.ts';
import { jobEvent, type JobLine } from '#core/api/jobs-api.ts';
import { indexParts, type Located, locate, type PartIndex } from '#core/marks/live-plan.ts';
import type { AcceptedMark, JobProgress } from '#core/marks/mark.ts';
import { applyMark, emptyProgress, own } from '#core/marks/progress.ts';
import type { Plan } from '#core/plan/plan.ts';
import { hub } from './client.ts';

/** A job as this screen knows it. The plan carries the codes of the first blanks; replacements are in the progress. */
export interface LiveJob {
  readonly line: JobLine;
  readonly plan: Plan;
  readonly index: PartIndex;
  readonly progress: JobProgress;
}

const SILENT_MS = 3000;

/** All current jobs, kept up to date by the hub's events. */
class Live {
  jobs = $state.raw<ReadonlyMap<string, LiveJob>>(new Map());
  loaded = $state(false);
  away = $state(false);
  #events: EventSource | null = null;
  #lastBeat = 0;

  /** Begins to listen; safe to call again. */
  start(): void {
    if (this.#events !== null) return;
    this.#lastBeat = Date.now();
    this.#connect();
    setInterval(() => {
      if (Date.now() - this.#lastBeat > SILENT_MS - 500) this.away = true;
    }, 250);
  }

  #connect(): void {
    const events = new EventSource('/api/events');
    this.#events = events;
    events.addEventListener('open', () => void this.reload());
    events.addEventListener('beat', () => {
      this.#lastBeat = Date.now();
      if (this.away) void this.reload();
      this.away = false;
    });
    events.addEventListener('mark', (event) => {
      const read = acceptedMark.safeParse(JSON.parse(String(event.data)));
      if (read.success) this.take(read.data as AcceptedMark);
    });
    events.addEventListener('job', (event) => {
      const read = jobEvent.safeParse(JSON.parse(String(event.data)));
      if (read.success) void this.reload(read.data.id);
    });
    events.addEventListener('error', () => {
      if (events.readyState !== EventSource.CLOSED) return;
      events.close();
      setTimeout(() => this.#connect(), 1000);
    });
  }

  /** Asks for the list of jobs, and for the plan of those that are new or changed; progress of all. */
  async reload(changed?: string): Promise<void> {
    const list = await hub.jobs();
    if (list.kind !== 'ok') return;
    const jobs = new Map<string, LiveJob>();
    for (const line of list.value.jobs) {
      const known = this.jobs.get(line.id);
      const same = known !== undefined && known.line.revision === line.revision && line.id !== changed;
      const plan = same ? null : await hub.plan(line.id);
      const progress = await hub.progress(line.id);
      const planned = same ? known.plan : plan?.kind === 'ok' ? plan.value : null;
      if (planned === null) continue;
      jobs.set(line.id, {
        line,
        plan: planned,
        index: same ? known.index : indexParts(planned),
        progress: progress.kind === 'ok' ? progress.value : (known?.progress ?? emptyProgress(line.id)),
      });
    }
    this.jobs = jobs;
    this.loaded = true;
  }

  /** Folds one more mark in. */
  take(accepted: AcceptedMark): void {
    const job = this.jobs.get(accepted.job);
    if (job === undefined) return;
    this.jobs = new Map(this.jobs).set(accepted.job, { ...job, progress: applyMark(job.progress, accepted) });
  }

  /** The part that a code stands or stood for. */
  find(code: string): { readonly job: LiveJob; readonly found: Located } | null {
    for (const job of this.jobs.values()) {
      if (!job.index.parts.has(code) && own(job.progress.parts, code) === undefined) continue;
      const found = locate(job.index, job.progress, code);
      if (found !== null) return { job, found };
    }
    return null;
  }
}

export const live = new Live();
