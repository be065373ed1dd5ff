import { readJob } from '../job/read-job.ts';
import { builtInProfile, type ShopProfile } from '../shop/shop-profile.ts';
import type { Plan } from '../plan/plan.ts';
import type { Result } from '../fields/fault.ts';
import { planJob, type PlanOptions } from './plan-job.ts';

/** From a job file (already parsed from JSON) to its plan, with the built-in shop unless another is given. */
export function planFile(
  input: unknown,
  options: PlanOptions & { readonly profile?: ShopProfile } = {},
): Result<Plan> {
  const job = readJob(input);
  if (!job.ok) return job;
  return planJob(job.value, options.profile ?? builtInProfile(job.value.units), options);
}
