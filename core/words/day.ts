import { type Language, tableOf } from './languages.ts';
import { spokenNow } from './say.ts';
import { NO_BREAK } from '../length/unbroken.ts';

/** A date YYYY-MM-DD as people of the language write it, on screens and papers alike: "Fri, Dec 18". */
export function shownDay(date: string, language: Language = spokenNow()): string {
  return written(new Date(`${date}T00:00:00Z`), language, {
    weekday: 'short',
    month: 'short',
    day: 'numeric',
    timeZone: 'UTC',
  });
}

/** The same with its year, for a day that may be in another: "Fri, Dec 18, 2026"; in full where it is read out. */
export function shownFullDay(
  date: string,
  how: 'short' | 'long' = 'short',
  language: Language = spokenNow(),
): string {
  return written(new Date(`${date}T00:00:00Z`), language, {
    weekday: how,
    year: 'numeric',
    month: how,
    day: 'numeric',
    timeZone: 'UTC',
  });
}

/** An instant likewise, by this machine's clock: "Dec 18, 2:05 PM"; with its second where two may stand in one minute. */
export function shownInstant(
  instant: string,
  to: 'minute' | 'second' = 'minute',
  language: Language = spokenNow(),
): string {
  return written(new Date(instant), language, {
    month: 'short',
    day: 'numeric',
    hour: 'numeric',
    minute: '2-digit',
    ...(to === 'second' ? { second: '2-digit' as const } : {}),
  });
}

/** An instant as somebody says it who was there: the time alone where it is today, "2:05 PM". */
export function shownSince(
  instant: string,
  now: number = Date.now(),
  language: Language = spokenNow(),
): string {
  const at = new Date(instant);
  return at.toDateString() === new Date(now).toDateString()
    ? written(at, language, { hour: 'numeric', minute: '2-digit' })
    : shownInstant(instant, 'minute', language);
}

/** AM and PM stay on their hour's line; not every typeface has the narrow space that some put there. */
function written(instant: Date, language: Language, how: Intl.DateTimeFormatOptions): string {
  return instant.toLocaleString(tableOf(language).locale, how).replace(/\s(?=[AP]M$)/, NO_BREAK);
}
