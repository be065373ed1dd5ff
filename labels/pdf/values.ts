import { showValue, shownText } from '#core/length/reading.ts';
import { NO_BREAK } from '#core/length/unbroken.ts';
import { drawn } from '#core/views/plan-number.ts';
import type { PlanPart, SettingValue } from '#core/plan/plan.ts';
import type { Units } from '#core/length/units.ts';

/** A printed value as it is read on paper: "14 3/4 in", "374.7 mm", "≈ 9 21/32 in". */
export function withUnit(value: SettingValue | undefined, units: Units): string {
  return `${asText(value, units)}${NO_BREAK}${units}`;
}

/** The same without its unit. */
export function asText(value: SettingValue | undefined, units: Units): string {
  return shownText(showValue(value ?? '', units, { denominator: 64, places: units === 'in' ? 3 : 1 }));
}

/** A setting of a part's stage as a number to draw with, 0 where there is none. */
export function settingOf(part: PlanPart, stage: string, name: string): number {
  return drawn(part.stages.find((each) => each.stage === stage)?.settings[name]);
}
