import { parseLength } from '../length/parse-length.ts';
import { printLength } from '../length/print-length.ts';
import { type LeftToPare, leftToPare } from '../plan/left-to-pare.ts';
import type { SettingValue } from '../plan/plan.ts';
import type { Step } from './step.ts';
import { toMultiple } from './to-step.ts';

/**
 * Where a machine is set so that something is left to pare or to sand beside a settable value: the share comes off last.
 * What then is no multiple of the finest step, as in decimal inches, is brought to the nearest. Null where nothing is left.
 */
export function paredAt(stage: string, name: string, value: SettingValue, step: Step): LeftToPare | null {
  const pare = leftToPare(stage, name, value, step.units);
  const set = pare === null ? null : parseLength(pare.set, step.units);
  return pare === null || set?.ok !== true
    ? null
    : { ...pare, set: printLength(toMultiple(set.value, 'nearest', step.fine)) };
}
