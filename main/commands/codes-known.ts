import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plan } from '#core/plan/plan.ts';
import { documentName, type JobDocument, readJobDocument } from '../store/documents/job-document.ts';
import { JOBS_NAME } from '../store/files/folder-names.ts';
import { openJob, withLastPlan } from '../store/documents/stored-job.ts';

/** What a hub's data say of a plan's codes: those that its job of this id or name has not, or why that cannot be told. */
export type CodesKnown =
  | { readonly ok: true; readonly unknown: readonly string[] }
  | { readonly ok: false; readonly message: string };

/**
 * Looks a plan up in a hub's data folder. A job there may have another id than the file, since the hub gives a fresh one
 * where codes existed already. No job of this id or name: nothing is unknown.
 */
export function codesKnown(plan: Plan, data: string): CodesKnown {
  const folder = join(data, JOBS_NAME);
  const own = documentName(plan.id);
  const codes = plan.doors.flatMap(({ parts }) => parts.map(({ code }) => code));
  let least: readonly string[] | null = null;
  for (const name of existsSync(folder) ? readdirSync(folder) : []) {
    let document: JobDocument;
    try {
      document = readJobDocument(readFileSync(join(folder, name), 'utf8'));
    } catch (error) {
      if (name !== own) continue;
      const reason = error instanceof Error ? error.message : String(error);
      return { ok: false, message: `${join(folder, name)} cannot be read: ${reason.split('\n')[0] ?? ''}` };
    }
    if (document.id !== plan.id && document.file.job !== plan.job) continue;
    const kept = openJob(document);
    const stored = kept.ok ? kept.value : withLastPlan(document, kept.faults, null);
    if (stored.summary.doors === 0) continue;
    const { parts } = stored.index;
    const unknown = codes.filter((code) => !parts.has(code));
    if (least === null || unknown.length < least.length) least = unknown;
  }
  return { ok: true, unknown: least ?? [] };
}
