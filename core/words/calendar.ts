import { dayOf, isoDay } from './read-day.ts';
import { type Language, tableOf } from './languages.ts';
import { spokenNow } from './say.ts';

/** A month as it hangs on a wall: its name, the names of its columns, and its days in weeks; null before the first and after the last. */
export interface Month {
  readonly name: string;
  readonly weekdays: readonly { readonly short: string; readonly long: string }[];
  readonly weeks: readonly (readonly (string | null)[])[];
}

/** The month of a date YYYY-MM-DD, in the order and words of the language. */
export function monthOf(date: string, language: Language = spokenNow()): Month {
  const first = dayOf(`${date.slice(0, 7)}-01`);
  const { locale, firstDay } = tableOf(language);
  const said = (day: Date, how: Intl.DateTimeFormatOptions) =>
    day.toLocaleString(locale, { ...how, timeZone: 'UTC' });
  const before = (first.getUTCDay() - firstDay + 7) % 7;
  const cells: (string | null)[] = Array<null>(before).fill(null);
  for (let day = first; day.getUTCMonth() === first.getUTCMonth(); day = dayOf(movedBy(isoDay(day), 1)))
    cells.push(isoDay(day));
  while (cells.length % 7 !== 0) cells.push(null);
  return {
    name: said(first, { month: 'long', year: 'numeric' }),
    weekdays: Array.from({ length: 7 }, (_, k) => {
      // January 4, 1970 was a Sunday.
      const day = new Date(Date.UTC(1970, 0, 4 + firstDay + k));
      return { short: said(day, { weekday: 'short' }), long: said(day, { weekday: 'long' }) };
    }),
    weeks: Array.from({ length: cells.length / 7 }, (_, k) => cells.slice(7 * k, 7 * k + 7)),
  };
}

/** The date so many days later, or earlier where it is less than 0. */
export function movedBy(date: string, days: number): string {
  const day = dayOf(date);
  day.setUTCDate(day.getUTCDate() + days);
  return isoDay(day);
}

/** The same day so many months later; the last of that month where it has no such day. */
export function movedByMonths(date: string, months: number): string {
  const day = dayOf(date);
  const last = new Date(Date.UTC(day.getUTCFullYear(), day.getUTCMonth() + months + 1, 0));
  return isoDay(new Date(last.setUTCDate(Math.min(day.getUTCDate(), last.getUTCDate()))));
}

/** The first day of the week that a date is in, or its last. */
export function endOfWeek(date: string, end: 'first' | 'last', language: Language = spokenNow()): string {
  const into = (dayOf(date).getUTCDay() - tableOf(language).firstDay + 7) % 7;
  return movedBy(date, end === 'first' ? -into : 6 - into);
}
