/** A day as a count since 1970-01-01 by the shop's own clock. */
export type Day = number;

/** On which of the shop's days an instant (milliseconds since 1970, UTC) falls. The shop's clock is the caller's to know. */
export type DayOf = (instant: number) => Day;

/** 0 for Sunday to 6 for Saturday; day 0 was a Thursday. */
export function weekday(day: Day): number {
  return (((day + 4) % 7) + 7) % 7;
}

/** The day of a date as the job file writes it, YYYY-MM-DD. */
export function dayOfDate(date: string): Day {
  return Math.round(Date.parse(`${date}T00:00:00Z`) / 86_400_000);
}

/** A day as YYYY-MM-DD. */
export function dateOfDay(day: Day): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}

const MONDAY_TO_FRIDAY = [1, 2, 3, 4, 5];

/**
 * The weekdays on which a shop works, from the days on which something was marked: with two weeks of them those that
 * occur, before that Monday to Friday and whatever else occurs (common practice, no source).
 */
export function workedWeekdays(days: readonly Day[], today: Day): ReadonlySet<number> {
  const first = Math.min(...days);
  const seen = days.map(weekday);
  return new Set(today - first >= 14 ? seen : [...MONDAY_TO_FRIDAY, ...seen]);
}
