/**
 * Of a text of events those that a reader was not told yet: marks are numbered (`id: 17`), and it was told all up to a number
 * while they waited. What has no number goes through as it is.
 */
export function notToldYet(events: string, upTo: number): string {
  return events
    .split(/(?<=\n\n)/)
    .filter((event) => {
      const id = /^id: (\d+)$/m.exec(event)?.[1];
      return id === undefined || Number(id) > upTo;
    })
    .join('');
}
