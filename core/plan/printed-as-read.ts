import { parseLength } from '../length/parse-length.ts';
import { isPrintedLength } from '../length/print-length.ts';
import { showValue, shownText } from '../length/reading.ts';
import { typeLength } from '../length/type-length.ts';
import type { Units } from '../length/units.ts';
import type { SettingValue } from './plan.ts';

/**
 * A printed value as it stands in a sentence: an exact length as it is typed in these units, what has left the fractions as
 * near as a tape reads; counts and words as they are.
 */
export function printedAsRead(value: SettingValue, units: Units): SettingValue {
  if (typeof value === 'number') return value;
  if (/^-?\d+\.\d{6}$/.test(value)) return shownText(showValue(value, units));
  if (units === 'in' || !isPrintedLength(value.replace(/^-/, ''))) return value;
  const read = parseLength(value, units);
  return read.ok ? typeLength(read.value, units) : value;
}
