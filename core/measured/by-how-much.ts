import { less, type Length } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import { isPrintedLength, printLength } from '../length/print-length.ts';
import type { SettingValue } from '../plan/plan.ts';
import type { Units } from '../length/units.ts';

/** By how much one exact length is more or less than another, printed; null for words, counts and figures with decimals. */
export function byHowMuch(
  was: SettingValue,
  now: SettingValue,
  units: Units,
): { readonly by: string; readonly more: boolean } | null {
  const [before, after] = [exact(was, units), exact(now, units)];
  if (before === null || after === null) return null;
  const more = after.compare(before) > 0;
  return { by: printLength(more ? less(after, before) : less(before, after)), more };
}

function exact(value: SettingValue, units: Units): Length | null {
  if (typeof value === 'number' || !isPrintedLength(value)) return null;
  const read = parseLength(value, units);
  return read.ok ? read.value : null;
}
