import { readMeasured } from '#core/measured/read-measured.ts';
import type { Fault, Result } from '#core/fields/fault.ts';
import type { JobDocument } from './job-document.ts';
import { planDocument } from './plan-document.ts';
import { openJob, type StoredJob, withLastPlan } from './stored-job.ts';

/**
 * A changed document with its plan, or what is wrong with it. One that had faults before may have faults still, as long as
 * they are not in what was changed: its file and its measured sizes are corrected one after the other.
 */
export function reopen(before: StoredJob, document: JobDocument, measuring: boolean): Result<StoredJob> {
  const opened = openJob(document);
  if (opened.ok || before.faults.length === 0) return opened;
  const unmeasured = planDocument({ ...document, measured: {} });
  const others = measuring
    ? !unmeasured.ok && isReadable(document) && opened.faults.every((fault) => has(unmeasured.faults, fault))
    : unmeasured.ok;
  return others ? { ok: true, value: withLastPlan(document, opened.faults, before.plan) } : opened;
}

function isReadable({ measured, file }: JobDocument): boolean {
  return readMeasured(measured, file.units === 'mm' ? 'mm' : 'in').ok;
}

function has(faults: readonly Fault[], { path, code }: Fault): boolean {
  return faults.some((fault) => fault.path === path && fault.code === code);
}
