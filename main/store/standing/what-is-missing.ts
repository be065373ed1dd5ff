import type { Trouble } from '#core/api/office-api.ts';
import type { Standing } from './standing-record.ts';

/** What lies in a folder when it is opened, before anything in it is changed. */
export interface FoundThere {
  /** Null where there is no log. */
  readonly logBytes: number | null;
  /** How many jobs' documents there are, those that cannot be read among them. */
  readonly jobs: number;
  readonly shop: boolean;
}

/** What a folder held when it was last looked at and does not hold any more. */
export function whatIsMissing(before: Standing, found: FoundThere): Trouble[] {
  const { logBytes } = found;
  const missing: Trouble[] = [];
  if (logBytes === null && before.bytes > 0) missing.push({ code: 'log-gone', figures: { seq: before.seq } });
  else if (logBytes !== null && logBytes < before.bytes)
    missing.push({
      code: 'log-shorter',
      figures: { bytes: logBytes, was: before.bytes, seq: before.seq },
    });
  if (found.jobs < before.jobs)
    missing.push({ code: 'jobs-gone', figures: { count: before.jobs - found.jobs } });
  if (before.shop && !found.shop) missing.push({ code: 'shop-gone', figures: {} });
  return missing;
}
