import { type Language, tableOf } from './languages.ts';
import { spokenNow } from './say.ts';

const ISO = /^\d{4}-\d{2}-\d{2}$/;

/** A date as it is typed, YYYY-MM-DD or in figures in the language's own order ("5/3/2027"), as YYYY-MM-DD; null where it is none. */
export function readDay(text: string, language: Language = spokenNow()): string | null {
  const typed = text.trim();
  const figures = typed.split(/[^\d]+/).map(Number);
  if (!/^\d{1,4}([-/. ]+)\d{1,2}\1\d{1,4}$/.test(typed)) return null;
  const order = /^\d{4}/.test(typed) ? (['year', 'month', 'day'] as const) : orderOf(language);
  const at = (name: 'year' | 'month' | 'day') => figures[order.indexOf(name)] ?? 0;
  const year = at('year') < 100 ? 2000 + at('year') : at('year');
  const day = `${String(year).padStart(4, '0')}-${two(at('month'))}-${two(at('day'))}`;
  return isDay(day) ? day : null;
}

/** A date YYYY-MM-DD as it is typed: in figures, in the language's own order. */
export function typedDay(date: string, language: Language = spokenNow()): string {
  return dayOf(date).toLocaleDateString(tableOf(language).locale, { timeZone: 'UTC' });
}

/** Is this a day of the calendar, as YYYY-MM-DD? */
export function isDay(text: string): boolean {
  return ISO.test(text) && !Number.isNaN(dayOf(text).getTime()) && isoDay(dayOf(text)) === text;
}

/** Which day an instant falls on by this machine's clock, as YYYY-MM-DD. */
export function today(now: Date): string {
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The day of a date YYYY-MM-DD, at midnight in Greenwich: days are counted there, where no hour is ever missing. */
export function dayOf(date: string): Date {
  return new Date(`${date}T00:00:00Z`);
}

/** That day's date as YYYY-MM-DD. */
export function isoDay(day: Date): string {
  return day.toISOString().slice(0, 10);
}

function two(figure: number): string {
  return String(figure).padStart(2, '0');
}

function orderOf(language: Language): ('year' | 'month' | 'day')[] {
  const parts = new Intl.DateTimeFormat(tableOf(language).locale, { timeZone: 'UTC' }).formatToParts(
    dayOf('2026-12-18'),
  );
  return parts.flatMap(({ type }) => (type === 'year' || type === 'month' || type === 'day' ? [type] : []));
}
