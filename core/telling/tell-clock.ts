import { counted, say } from '../words/say.ts';

const MINUTE = 60;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** By how much a clock is off, in whole seconds, minutes, hours or days: "5 min ahead". Milliseconds; behind is below 0. */
export function tellClock(ms: number): string {
  return say(ms < 0 ? 'clock.behind' : 'clock.ahead', { span: spanOf(Math.round(Math.abs(ms) / 1000)) });
}

/** The largest measure of which there are two or more. */
function spanOf(seconds: number): string {
  if (seconds < 2 * MINUTE) return say('clock.seconds', { count: seconds });
  if (seconds < 2 * HOUR) return say('clock.minutes', { count: Math.round(seconds / MINUTE) });
  if (seconds < 2 * DAY) return say('clock.hours', { count: Math.round(seconds / HOUR) });
  return counted('clock.days', Math.round(seconds / DAY));
}
