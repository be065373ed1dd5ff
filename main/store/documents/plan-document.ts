import { readJob } from '#core/job/read-job.ts';
import { NOTHING_MEASURED } from '#core/measured/measured.ts';
import { readMeasured } from '#core/measured/read-measured.ts';
import type { Plan } from '#core/plan/plan.ts';
import type { Result } from '#core/fields/fault.ts';
import { planJob } from '#core/planning/plan-job.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import type { Language } from '#core/words/languages.ts';
import type { JobDocument } from './job-document.ts';
import { allowPlanOf } from './plan-limit.ts';

/** The plan of a document, with the reasons of every setting in a language if asked for; or of the doors of some marks alone. */
export function planDocument(
  document: JobDocument,
  why: Language | null = null,
  marks: readonly string[] | null = null,
): Result<Plan> {
  const job = readJob(document.file);
  if (!job.ok) return job;
  const profile = readProfile(document.profile, job.value.units);
  if (!profile.ok) return profile;
  const measured = readMeasured(document.measured, job.value.units);
  if (!measured.ok) return measured;
  allowPlanOf(doorsOf(job.value.doors));
  const doors = marks === null ? job.value.doors : job.value.doors.filter(({ mark }) => marks.includes(mark));
  return planJob({ ...job.value, id: document.id, doors }, profile.value, { why, measured: measured.value });
}

/**
 * The nearest to a plan of a document that is refused and has none from before: what cannot be read of its tools and its
 * measured sizes is left out, and no rule is asked. Its stickers are known by it. Where that cannot be reckoned either, it
 * has no doors.
 */
export function planAnyway(document: JobDocument): Plan {
  const { id, file } = document;
  const job = readJob(file);
  const units = file.units === 'mm' ? 'mm' : 'in';
  const none: Plan = {
    format: 1,
    id,
    job: typeof file.job === 'string' && file.job !== '' ? file.job.slice(0, 60) : id,
    units,
    doors: [],
  };
  if (!job.ok) return none;
  allowPlanOf(doorsOf(job.value.doors));
  const profile = readProfile(document.profile, units);
  const measured = readMeasured(document.measured, units);
  try {
    const planned = planJob({ ...job.value, id }, profile.ok ? profile.value : builtInProfile(units), {
      measured: measured.ok ? measured.value : NOTHING_MEASURED,
      despite: true,
    });
    return planned.ok ? planned.value : none;
  } catch {
    return none;
  }
}

function doorsOf(doors: readonly { readonly quantity: number }[]): number {
  return doors.reduce((sum, { quantity }) => sum + quantity, 0);
}
