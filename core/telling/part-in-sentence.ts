import { hasWords, type Language, say } from '../words/say.ts';

/** A part's name as it stands inside a sentence: "the left stile"; "stile" and "rail" are any of them. An unknown one stands for itself. */
export function partInSentence(part: string, language?: Language): string {
  const numbered = /^(rail-mid|panel)-(\d+)$/.exec(part);
  const key =
    numbered === null ? `named.${part}` : `named.${numbered[1] === 'panel' ? 'panel-k' : 'rail-mid'}`;
  return hasWords(key) ? say(key, { k: numbered?.[2] ?? '' }, language) : part;
}
