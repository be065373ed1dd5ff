/** A date YYYY-MM-DD as people say it: "Fri, Dec 18". */
export function shownDay(date: string): string {
  return new Date(`${date}T00:00:00Z`).toLocaleDateString('en', {
    weekday: 'short',
    month: 'short',
    day: 'numeric',
    timeZone: 'UTC',
  });
}

/** An instant as people say it, by this screen's clock: "Dec 18, 14:05"; with its second where two may stand in one minute. */
export function shownInstant(instant: string, to: 'minute' | 'second' = 'minute'): string {
  return new Date(instant).toLocaleString('en', {
    month: 'short',
    day: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    ...(to === 'second' ? { second: '2-digit' as const } : {}),
    hour12: false,
  });
}
