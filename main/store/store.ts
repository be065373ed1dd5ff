import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { z } from 'zod';
import { acceptedMark } from '#core/api/marks-api.ts';
import { partCode } from '#core/codes/part-code.ts';
import { judgeMark, type Judgement } from '#core/marks/judge-mark.ts';
import { type Located, locate } from '#core/marks/live-plan.ts';
import type { AcceptedMark, JobProgress, Mark, Refusal } from '#core/marks/mark.ts';
import { applyMark, emptyProgress, foldMarks } from '#core/marks/progress.ts';
import { EventLog, type ReadLog } from './event-log.ts';
import type { FilePort } from './file-port.ts';
import type { StoredJob } from './job-document.ts';
import { JobStore } from './job-store.ts';

const entrySchema = z.object({ kind: z.literal('mark'), mark: acceptedMark.omit({ seq: true }) });

export type Marked =
  | {
      readonly ok: true;
      readonly accepted: AcceptedMark;
      readonly stored: StoredJob;
      readonly progress: JobProgress;
    }
  | {
      readonly ok: false;
      readonly code: Refusal;
      readonly missing?: readonly string[];
      readonly figures?: Readonly<Record<string, string>>;
    };

interface Remembered {
  readonly content: string;
  readonly accepted: AcceptedMark;
}

/** All that the hub keeps: the jobs that people write, and the log of what happened, folded into progress. */
export class Store {
  readonly jobs: JobStore;
  readonly #log: EventLog;
  readonly read: ReadLog;
  /** What is on disk. Screens see this. */
  readonly #durable = new Map<string, JobProgress>();
  /** With what is still being written. New marks are judged by this. */
  readonly #pending = new Map<string, JobProgress>();
  /** Codes of replacements, and the job they belong to. */
  readonly #replacements = new Map<string, string>();
  readonly #ids = new Map<string, Remembered>();
  readonly #recent: AcceptedMark[] = [];
  readonly #listeners = new Set<(accepted: AcceptedMark) => void>();

  private constructor(jobs: JobStore, log: EventLog, read: ReadLog, history: Map<string, AcceptedMark[]>) {
    this.jobs = jobs;
    this.#log = log;
    this.read = read;
    for (const [job, marks] of history) {
      this.#durable.set(job, foldMarks(emptyProgress(job), marks));
      for (const accepted of marks) this.#remember(accepted);
    }
    this.#recent.sort((a, b) => a.seq - b.seq);
  }

  /** Opens a data folder: jobs and log. The caller holds the lock. */
  static async open(port: FilePort, folder: string): Promise<Store> {
    await port.makeFolder(folder);
    const jobs = new JobStore(port, join(folder, 'jobs'));
    await jobs.open();
    const history = new Map<string, AcceptedMark[]>();
    const { log, read } = await EventLog.open(port, join(folder, 'log.jsonl'), (seq, entry) => {
      const known = entrySchema.safeParse(entry);
      if (!known.success) return;
      const accepted = { ...known.data.mark, seq } as AcceptedMark;
      const marks = history.get(accepted.job);
      if (marks === undefined) history.set(accepted.job, [accepted]);
      else marks.push(accepted);
    });
    return new Store(jobs, log, read, history);
  }

  get lastSeq(): number {
    return this.#log.lastSeq;
  }

  /** Has anything ever happened in a job of this id? */
  seen(job: string): boolean {
    return this.#durable.has(job);
  }

  progress(job: string): JobProgress {
    return this.#durable.get(job) ?? emptyProgress(job);
  }

  /** The part that a code stands or stood for, and its job. */
  find(code: string): { readonly stored: StoredJob; readonly found: Located } | null {
    const replaced = this.#replacements.get(code);
    const stored = this.jobs.ownerOf(code) ?? (replaced === undefined ? undefined : this.jobs.get(replaced));
    const found = stored === undefined ? null : locate(stored.index, this.progress(stored.document.id), code);
    return stored === undefined || found === null ? null : { stored, found };
  }

  /**
   * Takes a mark: judged against all marks before it, written down, flushed, and only then answered. Rejects when it
   * could not be written; then nothing of it is kept. The same id with the same content answers as before.
   */
  async mark(mark: Mark): Promise<Marked> {
    const known = this.#ids.get(mark.id);
    if (known !== undefined) return this.#again(known, mark);
    const replaced = this.#replacements.get(mark.code);
    const stored =
      this.jobs.ownerOf(mark.code) ?? (replaced === undefined ? undefined : this.jobs.get(replaced));
    if (stored === undefined) return { ok: false, code: 'unknown-code' };
    const job = stored.document.id;
    const progress = this.#pending.get(job) ?? this.progress(job);
    const judged = judgeMark(locate(stored.index, progress, mark.code), progress, mark);
    if (!judged.ok) return judged;
    const unnumbered = this.#accept(stored, progress, mark, judged);
    const { seq, written } = this.#log.append({ kind: 'mark', mark: unnumbered });
    const accepted: AcceptedMark = { seq, ...unnumbered };
    this.#pending.set(job, applyMark(progress, accepted));
    const remembered = this.#remember(accepted);
    try {
      await written;
    } catch (error) {
      this.#ids.delete(mark.id);
      if (accepted.replacement !== undefined) this.#replacements.delete(accepted.replacement.code);
      this.#recent.splice(this.#recent.indexOf(accepted), 1);
      this.#pending.delete(job);
      throw error;
    }
    const durable = applyMark(this.progress(job), remembered.accepted);
    this.#durable.set(job, durable);
    if (this.#pending.get(job)?.seq === accepted.seq) this.#pending.delete(job);
    for (const listener of this.#listeners) listener(accepted);
    return { ok: true, accepted, stored, progress: durable };
  }

  #accept(
    stored: StoredJob,
    progress: JobProgress,
    mark: Mark,
    { door, part }: Extract<Judgement, { ok: true }>,
  ): Omit<AcceptedMark, 'seq'> {
    const job = stored.document.id;
    const base = { received: new Date().toISOString(), job, door: door.door, part: part.part, mark };
    if (mark.mark !== 'spoiled') return base;
    const number = (progress.parts[mark.code]?.number ?? 0) + 1;
    const k = Number(door.door.slice(door.mark.length + 1));
    return {
      ...base,
      replacement: {
        code: partCode({ job, mark: door.mark, k, part: part.part, replacement: number }),
        number,
      },
    };
  }

  /** What the answer to this id was: the same again if the content is the same. */
  #again({ content, accepted }: Remembered, mark: Mark): Marked {
    const stored = this.jobs.get(accepted.job);
    if (content !== contentOf(mark) || stored === undefined) return { ok: false, code: 'id-reused' };
    return { ok: true, accepted, stored, progress: progressAt(this.progress(accepted.job), accepted) };
  }

  #remember(accepted: AcceptedMark): Remembered {
    const remembered = { content: contentOf(accepted.mark), accepted };
    this.#ids.set(accepted.mark.id, remembered);
    if (accepted.replacement !== undefined) this.#replacements.set(accepted.replacement.code, accepted.job);
    this.#recent.push(accepted);
    return remembered;
  }

  /** Every accepted mark after this number, in order. */
  since(seq: number): AcceptedMark[] {
    return this.#recent.filter(
      (accepted) => accepted.seq > seq && accepted.seq <= this.progress(accepted.job).seq,
    );
  }

  /** Calls back for every mark once it is on disk; returns what ends it. */
  onMark(listener: (accepted: AcceptedMark) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Finishes what is being written. */
  async close(): Promise<void> {
    await this.#log.close();
  }
}

function contentOf(mark: Mark): string {
  return createHash('sha256')
    .update(JSON.stringify([mark.code, mark.station, mark.stage, mark.mark, mark.by, mark.reason, mark.at]))
    .digest('base64');
}

/** A job's progress as it was when a mark was answered, as far as later marks did not take anything back. */
function progressAt(now: JobProgress, accepted: AcceptedMark): JobProgress {
  const upTo = <T extends { readonly seq: number }>(table: Readonly<Record<string, T>>) =>
    Object.fromEntries(Object.entries(table).filter(([, { seq }]) => seq < accepted.seq));
  const part = now.parts[accepted.mark.code];
  const door = now.doors[accepted.door];
  const before: JobProgress = {
    ...now,
    seq: accepted.seq - 1,
    parts: part === undefined ? now.parts : { ...now.parts, [part.code]: { ...part, done: upTo(part.done) } },
    doors: door === undefined ? now.doors : { ...now.doors, [accepted.door]: { done: upTo(door.done) } },
  };
  return applyMark(before, accepted);
}
