import type { SettingValue } from '../plan/plan.ts';

/** What stops a plan: where in the input, a stable code, and plain words. */
export interface Fault {
  readonly path: string;
  readonly code: string;
  readonly message: string;
  readonly figures?: Readonly<Record<string, SettingValue>>;
}

/** A value, or every fault that kept it from being made. */
export type Result<T, F = readonly Fault[]> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: F };
