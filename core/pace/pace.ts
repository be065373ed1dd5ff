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
/** A shop's first day counts as whole when its marks lie this far apart at least (common practice, no source). */
const WHOLE_DAY_MS = 6 * 3_600_000;

/**
 * The pace at which steps were marked done, from the times of the marks that still stand. Whole days before today count;
 * a working day on which nothing was marked counts as one without steps, once the shop's week is known. A first day that
 * was begun late says nothing of a whole one. Null until there is a whole working day to go by.
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
    if (day === first && !isWhole(times.filter((time) => dayOf(time) === first))) continue;
    if (count > 0 || (settled && weekdays.has(weekday(day)))) counted.push(count);
  }
  const perDay = counted.reduce((sum, count) => sum + count, 0) / counted.length;
  return counted.length === 0 || perDay === 0 ? null : { perDay, weekdays, today: doneToday };
}

function isWhole(times: readonly number[]): boolean {
  return Math.max(...times) - Math.min(...times) >= WHOLE_DAY_MS;
}
