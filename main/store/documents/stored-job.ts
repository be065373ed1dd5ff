import { createHash } from 'node:crypto';
import { indexParts, type PartIndex } from '#core/marks/live-plan.ts';
import type { Fault, Result } from '#core/fields/fault.ts';
import type { Plan } from '#core/plan/plan.ts';
import { documentText } from '../files/document.ts';
import type { JobDocument } from './job-document.ts';
import type { JobSummary } from './job-summary.ts';
import { planAnyway, planDocument } from './plan-document.ts';

/** A job that the hub holds: its document, and the plan that follows from it, or the last one that did. */
export class StoredJob {
  readonly document: JobDocument;
  readonly summary: JobSummary;
  /** Why this version makes no plan of it: it shows the last one until somebody has corrected the job. */
  readonly faults: readonly Fault[];
  #opened: { readonly plan: Plan; readonly index: PartIndex } | null;

  constructor(document: JobDocument, summary: JobSummary, plan: Plan | null, faults: readonly Fault[] = []) {
    this.document = document;
    this.summary = summary;
    this.faults = faults;
    this.#opened = plan === null ? null : { plan, index: indexParts(plan) };
  }

  /** The same plan, opened or not, for a document that differs in nothing that a plan hangs on. */
  with(document: JobDocument): StoredJob {
    const { summary, faults } = this;
    const same = new StoredJob(document, summary, null, faults);
    same.#opened = this.#opened;
    return same;
  }

  /** With the codes of the first blanks. Reckoned when it is first asked for. */
  get plan(): Plan {
    return this.#open().plan;
  }

  get index(): PartIndex {
    return this.#open().index;
  }

  #open(): { readonly plan: Plan; readonly index: PartIndex } {
    if (this.#opened !== null) return this.#opened;
    const planned = planDocument(this.document);
    // Only a document that this version has planned before comes without its plan.
    if (!planned.ok) throw new Error(`${this.summary.id} was planned before and now is not`);
    return (this.#opened = { plan: planned.value, index: indexParts(planned.value) });
  }
}

/** A document with its plan; faults when its file is none. A summary of the same text saves planning it now. */
export function openJob(document: JobDocument, known?: JobSummary): Result<StoredJob> {
  const hash = hashOf(document);
  if (known?.hash === hash) return { ok: true, value: new StoredJob(document, known, null) };
  const planned = planDocument(document);
  if (!planned.ok) return planned;
  return {
    ok: true,
    value: new StoredJob(document, summaryOf(document, hash, planned.value), planned.value),
  };
}

/** A job that this version makes no plan of, with the last one that was made; without one, what can be said of it. */
export function withLastPlan(document: JobDocument, faults: readonly Fault[], last: Plan | null): StoredJob {
  const plan = last ?? planAnyway(document);
  return new StoredJob(document, summaryOf(document, hashOf(document), plan), plan, faults);
}

/** The same job with other settings kept as they were marked: they change nothing of its plan. */
export function withAsMarked(stored: StoredJob, asMarked: JobDocument['asMarked']): StoredJob {
  const { document, summary, plan, faults } = stored;
  if (asMarked.length === 0 && document.asMarked.length === 0) return stored;
  const kept = { ...document, asMarked };
  return new StoredJob(kept, { ...summary, hash: hashOf(kept) }, plan, faults);
}

/** The same job put into the bin, or taken out of it (null): nothing of its plan hangs on that. */
export function withBinned(stored: StoredJob, binned: string | null): StoredJob {
  return stored.with({ ...stored.document, binned });
}

function summaryOf(document: JobDocument, hash: string, { job, units, doors }: Plan): JobSummary {
  const { due } = document.file;
  const codes = doors.flatMap(({ parts }) => parts.map(({ code }) => code));
  return {
    id: document.id,
    hash,
    job,
    ...(typeof due === 'string' ? { due } : {}),
    units,
    doors: doors.length,
    doorNames: doors.map(({ door }) => door),
    parts: codes.length,
    codes,
  };
}

/** In the bin or not, a job is the same. */
function hashOf(document: JobDocument): string {
  return createHash('sha256')
    .update(documentText({ ...document, binned: null }))
    .digest('base64');
}
