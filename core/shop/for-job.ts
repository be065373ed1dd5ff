import type { Job } from '../job/job.ts';
import type { ShopProfile } from './shop-profile.ts';

/** The shop as a job sees it: with the ways and the moisture that the job names itself. */
export function shopForJob(
  { ways, moisture }: Pick<Job, 'ways' | 'moisture'>,
  shop: ShopProfile,
): ShopProfile {
  return { ...shop, ways: { ...shop.ways, ...ways }, moisture: moisture ?? shop.moisture };
}
