import { createHash } from 'node:crypto';
import { z } from 'zod';
import { readJob } from '#core/job/read-job.ts';
import { indexParts, type PartIndex } from '#core/marks/live-plan.ts';
import type { Plan, Result } from '#core/plan/plan.ts';
import { planJob } from '#core/plan/plan-job.ts';
import { readProfile } from '#core/shop/read-profile.ts';

/** The newest form of a job's document that this version knows. */
export const DOCUMENT_FORMAT = 1;

/** A job as it lies in its file: the job file as saved, with the shop's tools of that day. */
export const jobDocument = z.object({
  format: z.literal(DOCUMENT_FORMAT),
  id: z.string(),
  revision: z.number().int(),
  file: z.record(z.string(), z.unknown()),
  profile: z.record(z.string(), z.unknown()),
});
export type JobDocument = z.infer<typeof jobDocument>;

/** A job that the hub holds: its document, and the plan that follows from it. */
export interface StoredJob {
  readonly document: JobDocument;
  readonly due: string | undefined;
  readonly plan: Plan;
  readonly index: PartIndex;
}

/** The plan of a document; faults when its file is none. */
export function openJob(document: JobDocument): Result<StoredJob> {
  const job = readJob(document.file);
  if (!job.ok) return job;
  const profile = readProfile(document.profile, job.value.units);
  if (!profile.ok) return profile;
  const planned = planJob({ ...job.value, id: document.id }, profile.value);
  if (!planned.ok) return planned;
  return {
    ok: true,
    value: { document, due: job.value.due, plan: planned.value, index: indexParts(planned.value) },
  };
}

/** The same plan with the reasons of every setting. */
export function explainedPlan(document: JobDocument): Plan | null {
  const job = readJob(document.file);
  const profile = job.ok ? readProfile(document.profile, job.value.units) : null;
  if (!job.ok || profile === null || !profile.ok) return null;
  const planned = planJob({ ...job.value, id: document.id }, profile.value, { why: true });
  return planned.ok ? planned.value : null;
}

/** The name of a job's file: from its id by a hash, so that no path is ever built from what people type. */
export function documentName(id: string): string {
  return `${createHash('sha256').update(id).digest('hex').slice(0, 32)}.json`;
}
