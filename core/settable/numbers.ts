import { type Length, ZERO } from '../length/length.ts';
import { isPrintedLength } from '../length/print-length.ts';
import { readPrinted } from '../length/read-printed.ts';
import type { Units } from '../length/units.ts';
import type { PlanStage, Settings, SettingValue } from '../plan/plan.ts';

/** A door says the same lengths again and again: each is read once. Exact whatever the units, as long as it is printed. */
const known = new Map<string, Length>();
const MOST_KNOWN = 2000;

/** A printed length read back; null for a count, a word, or a figure with six decimals. */
export function lengthOf(value: SettingValue | undefined, units: Units): Length | null {
  if (typeof value !== 'string') return null;
  const before = known.get(value);
  if (before !== undefined) return before;
  if (!isPrintedLength(value)) return null;
  const read = readPrinted(value, units);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(value, read);
  return read;
}

/** What a stage sets under this name, exactly as the plan has it; 0 where the stage or the setting is not there. */
export function exactly(stage: Pick<PlanStage, 'settings'> | undefined, name: string, units: Units): Length {
  const settings: Settings = stage?.settings ?? {};
  return lengthOf(settings[name], units) ?? ZERO;
}
