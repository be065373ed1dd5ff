import type { Plan } from '#core/plan/plan.ts';
import { lookUpJobs } from '../store/documents/look-up-jobs.ts';
import { disk } from '../store/files/disk.ts';

/** What a hub's data say of a plan's codes: those that its job of this id or name has not, or why that cannot be told. */
export type CodesKnown =
  | { readonly ok: true; readonly unknown: readonly string[] }
  | { readonly ok: false; readonly message: string };

/**
 * Looks a plan up in a hub's data folder. A job there may have another id than the file, since the hub gives a fresh one
 * where codes existed already. No job of this id or name: nothing is unknown.
 */
export async function codesKnown(plan: Plan, data: string): Promise<CodesKnown> {
  const found = await lookUpJobs(disk, data, plan);
  if (!found.ok) return found;
  const codes = plan.doors.flatMap(({ parts }) => parts.map(({ code }) => code));
  let least: readonly string[] | null = null;
  for (const { plan: there } of found.jobs) {
    if (there.doors.length === 0) continue;
    const known = new Set(there.doors.flatMap(({ parts }) => parts.map(({ code }) => code)));
    const unknown = codes.filter((code) => !known.has(code));
    if (least === null || unknown.length < least.length) least = unknown;
  }
  return { ok: true, unknown: least ?? [] };
}
