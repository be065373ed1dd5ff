import type { Pace } from './pace.ts';
import { dateOfDay, type Day, dayOfDate, weekday } from './work-days.ts';

/** A job as the forecast sees it. */
export interface Load {
  readonly job: string;
  readonly due?: string | undefined;
  /** Steps left to do. */
  readonly left: number;
}

/** When a job will be finished at the present pace. */
export interface Forecast {
  /** YYYY-MM-DD. */
  readonly finished: string;
  /** Working days until then from now, with their fraction. */
  readonly workdays: number;
  /** Days between the due date and that day: positive to spare, negative late, 0 on the day. Absent without a due date. */
  readonly spare?: number;
}

const MOST_DAYS = 3650;

/**
 * When each job will be finished at the shop's present pace, the earliest due first and those without a date last: a
 * job waits for all that are due before it. A finished job is left out.
 */
export function forecasts(loads: readonly Load[], pace: Pace, today: Day): ReadonlyMap<string, Forecast> {
  const found = new Map<string, Forecast>();
  let before = 0;
  for (const { job, due, left } of [...loads].sort(byDue)) {
    if (left === 0) continue;
    before += left;
    const finished = dayWhenDone(before, pace, today);
    found.set(job, {
      finished: dateOfDay(finished),
      workdays: before / pace.perDay,
      ...(due === undefined ? {} : { spare: dayOfDate(due) - finished }),
    });
  }
  return found;
}

function byDue(a: Load, b: Load): number {
  return (a.due ?? '9999').localeCompare(b.due ?? '9999');
}

/** The day on which this many steps are done, the rest of today's included. */
function dayWhenDone(steps: number, { perDay, weekdays, today: done }: Pace, today: Day): Day {
  let left = steps - (weekdays.has(weekday(today)) ? Math.max(0, perDay - done) : 0);
  let day = today;
  while (left > 0 && day - today < MOST_DAYS) {
    day += 1;
    if (weekdays.has(weekday(day))) left -= perDay;
  }
  return day;
}
