import { type Length, ZERO } from '../length/length.ts';
import { isPrintedLength } from '../length/print-length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { PlanStage, Settings, SettingValue } from '../plan/plan.ts';

/** A printed length read back; null for a count, a word, or a figure with six decimals. */
export function lengthOf(value: SettingValue | undefined, units: Units): Length | null {
  return typeof value === 'string' && isPrintedLength(value) ? readPrinted(value, units) : null;
}

/** What a stage sets under this name, exactly as the plan has it; 0 where the stage or the setting is not there. */
export function exactly(stage: Pick<PlanStage, 'settings'> | undefined, name: string, units: Units): Length {
  const settings: Settings = stage?.settings ?? {};
  return lengthOf(settings[name], units) ?? ZERO;
}
