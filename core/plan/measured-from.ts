import type { Why } from './plan.ts';

/** What is measured from nothing: one of the shop's tools, a choice, a count. */
const NOWHERE: ReadonlySet<string> = new Set(['none', 'chosen', 'counted']);

/** Where a setting is measured from, in words; null where it is measured from nothing. */
export function measuredFrom(why: Pick<Why, 'from' | 'datum'> | undefined): string | null {
  return why === undefined || NOWHERE.has(why.datum) ? null : why.from;
}
