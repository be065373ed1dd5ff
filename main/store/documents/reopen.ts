import { readMeasured } from '#core/measured/read-measured.ts';
import type { Fault, Result } from '#core/fields/fault.ts';
import type { Plan } from '#core/plan/plan.ts';
import type { JobDocument } from './job-document.ts';
import { planDocument } from './plan-document.ts';

/** A job's plan; where this version makes none of it, why, and the one that it shows instead. */
export interface Opened {
  readonly plan: Plan;
  readonly faults: readonly Fault[];
  /** It is no plan that was ever kept, but what can be reckoned in spite of the faults. */
  readonly anyway: boolean;
}

/**
 * A changed document with its plan, or what is wrong with it. One that had faults before may have faults still, as long as
 * they are not in what was changed: its file and its measured sizes are corrected one after the other.
 */
export function reopen(before: Opened, document: JobDocument, measuring: boolean): Result<Opened> {
  const planned = planDocument(document);
  if (planned.ok) return { ok: true, value: { plan: planned.value, faults: [], anyway: false } };
  if (before.faults.length === 0) return planned;
  const unmeasured = planDocument({ ...document, measured: {} });
  const others = measuring
    ? !unmeasured.ok && isReadable(document) && planned.faults.every((fault) => has(unmeasured.faults, fault))
    : unmeasured.ok;
  return others ? { ok: true, value: { ...before, faults: planned.faults } } : planned;
}

function isReadable({ measured, file }: JobDocument): boolean {
  return readMeasured(measured, file.units === 'mm' ? 'mm' : 'in').ok;
}

function has(faults: readonly Fault[], { path, code }: Fault): boolean {
  return faults.some((fault) => fault.path === path && fault.code === code);
}
