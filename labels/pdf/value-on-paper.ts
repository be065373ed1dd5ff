import { showValue, shownText } from '#core/length/reading.ts';
import { NO_BREAK } from '#core/length/unbroken.ts';
import type { SettingValue } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';

/** A printed value as it is read on paper: "14 3/4", "374.7", "≈ 9 21/32"; nothing where there is none. */
export function asText(value: SettingValue, units: Units): string {
  return shownText(showValue(value, units));
}

/** The same with its unit: "14 3/4 in". */
export function withUnit(value: SettingValue, units: Units): string {
  return `${asText(value, units)}${NO_BREAK}${units}`;
}
