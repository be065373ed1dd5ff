import type { Trouble } from '#core/api/office-api.ts';
import { counted, say } from '#core/words/say.ts';

/** What is lost, damaged or in the way of recording, in a sentence. */
export function lostWords({ code, figures }: Trouble): string {
  const count = Number(figures.count);
  if (code === 'log-damaged') return counted('lost.log-damaged', count);
  if (code === 'jobs-gone') return counted('lost.jobs-gone', count);
  return say(`lost.${code}`, figures);
}

/** The first of several in a sentence, and how many more there are; what keeps marks from being recorded goes first. */
export function firstLost(troubles: readonly Trouble[]): string {
  const first = troubles.find(({ code }) => code === 'cannot-write') ?? troubles[0];
  if (first === undefined) return '';
  const more = troubles.length - 1;
  return more === 0 ? lostWords(first) : say('lost.more', { first: lostWords(first), count: more });
}
