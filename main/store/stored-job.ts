import { createHash } from 'node:crypto';
import { readJob } from '#core/job/read-job.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import { indexParts, type PartIndex } from '#core/marks/live-plan.ts';
import type { Plan, Result, Units } from '#core/plan/plan.ts';
import { planJob } from '#core/plan/plan-job.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import { documentText } from './document.ts';
import type { JobDocument } from './job-document.ts';
import type { JobSummary } from './job-summary.ts';

/** A job that the hub holds: its document, and the plan that follows from it. */
export class StoredJob {
  readonly document: JobDocument;
  readonly summary: JobSummary;
  #opened: { readonly plan: Plan; readonly index: PartIndex } | null;

  constructor(document: JobDocument, summary: JobSummary, plan: Plan | null) {
    this.document = document;
    this.summary = summary;
    this.#opened = plan === null ? null : { plan, index: indexParts(plan) };
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
  const plan = planned.value;
  const { due } = document.file;
  const codes = plan.doors.flatMap(({ parts }) => parts.map(({ code }) => code));
  const summary: JobSummary = {
    id: document.id,
    hash,
    job: plan.job,
    ...(typeof due === 'string' ? { due } : {}),
    units: plan.units satisfies Units,
    doors: plan.doors.length,
    doorNames: plan.doors.map(({ door }) => door),
    parts: codes.length,
    codes,
  };
  return { ok: true, value: new StoredJob(document, summary, plan) };
}

/** The same job with other settings kept as they were marked: they change nothing of its plan. */
export function withAsMarked(stored: StoredJob, asMarked: JobDocument['asMarked']): StoredJob {
  const { document, summary, plan } = stored;
  if (asMarked.length === 0 && document.asMarked.length === 0) return stored;
  const kept = { ...document, asMarked };
  return new StoredJob(kept, { ...summary, hash: hashOf(kept) }, plan);
}

/** The plan of a document, with the reasons of every setting if asked for. */
export function planDocument(document: JobDocument, why = false): Result<Plan> {
  const job = readJob(document.file);
  if (!job.ok) return job;
  const profile = readProfile(document.profile, job.value.units);
  if (!profile.ok) return profile;
  const measured = readMeasured(document.measured, job.value.units);
  if (!measured.ok) return measured;
  return planJob({ ...job.value, id: document.id }, profile.value, { why, measured: measured.value });
}

function hashOf(document: JobDocument): string {
  return createHash('sha256').update(documentText(document)).digest('base64');
}
