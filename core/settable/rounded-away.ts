import { less, sign, times } from '../length/length.ts';
import { parseLength } from '../length/parse-length.ts';
import { printLength } from '../length/print-length.ts';
import { showDecimal, shownText } from '../length/reading.ts';
import { unbroken } from '../length/unbroken.ts';
import type { Units } from '../length/units.ts';
import type { SettingValue } from '../plan/plan.ts';

/** By how much two printed lengths of one unit differ, whichever is the larger; null where they do not or are none. */
export function roundedAway(exact: SettingValue, shown: SettingValue, units: Units): string | null {
  const [one, other] = [parseLength(exact, units), parseLength(shown, units)];
  if (!one.ok || !other.ok) return null;
  const away = less(one.value, other.value);
  return sign(away) === 0 ? null : printLength(sign(away) < 0 ? times(away, -1) : away);
}

/** Decimals of what was rounded away where it is no fraction of an inch that a person knows. */
const PLACES: Readonly<Record<Units, number>> = { in: 4, mm: 3 };

/** What was rounded away, to be read: a fraction of an inch by halving, of anything else so many decimals. */
export function awayText(away: string, units: Units): string {
  const halved = /^(?:\d+ )?\d+\/(?:2|4|8|16|32|64|128|256|512)$/.test(away);
  return units === 'in' && halved ? unbroken(away) : shownText(showDecimal(away, PLACES[units]));
}
