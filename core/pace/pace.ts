import { type Day, type DayOf, weekday, workedWeekdays } from './work-days.ts';

/** How fast a shop gets on: steps marked done in a working day, and on which weekdays it works. */
export interface Pace {
  readonly perDay: number;
  readonly weekdays: ReadonlySet<number>;
  /** Steps marked done today already. */
  readonly today: number;
}

/** The present pace looks back over this many working days. */
const LOOK_BACK = 5;
/** A weekday counts as worked when it was worked within this many days. */
const REMEMBERED_DAYS = 28;
/** With nothing but today to go by: a working day's hours (common practice, no source), and what it takes to say anything. */
const HOURS = 8;
const LEAST_STEPS = 12;
const HOUR_MS = 3_600_000;

/**
 * The pace at which steps were marked done, from the times of the marks that still stand. Whole days before today count;
 * a working day on which nothing was marked counts as one without steps, once the shop's week is known. On the first day
 * it is that day's own, taken from its first mark on. Null while too little is known to say.
 */
export function paceOf(times: readonly number[], now: number, dayOf: DayOf): Pace | null {
  const today = dayOf(now);
  const steps = new Map<Day, number>();
  for (const time of times) {
    const day = dayOf(time);
    if (day <= today && day > today - REMEMBERED_DAYS) steps.set(day, (steps.get(day) ?? 0) + 1);
  }
  if (steps.size === 0) return null;
  const weekdays = workedWeekdays([...steps.keys()], today);
  const doneToday = steps.get(today) ?? 0;
  const first = Math.min(...steps.keys());
  const settled = today - first >= 14;
  const counted: number[] = [];
  for (let day = today - 1; day >= first && counted.length < LOOK_BACK; day -= 1) {
    const count = steps.get(day) ?? 0;
    if (count > 0 || (settled && weekdays.has(weekday(day)))) counted.push(count);
  }
  if (counted.length > 0) {
    const perDay = counted.reduce((sum, count) => sum + count, 0) / counted.length;
    return perDay === 0 ? null : { perDay, weekdays, today: doneToday };
  }
  const began = Math.min(...times.filter((time) => dayOf(time) === today));
  const hours = Math.max((now - began) / HOUR_MS, 1);
  return doneToday < LEAST_STEPS ? null : { perDay: (doneToday / hours) * HOURS, weekdays, today: doneToday };
}
