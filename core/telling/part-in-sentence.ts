import { parsePart } from '../plan/part-name.ts';
import { hasWords, type Language, say } from '../words/say.ts';

/** A part's name as it stands inside a sentence: "left stile"; "stile" and "rail" are any of them. An unknown one stands for itself. */
export function partInSentence(name: string, language?: Language): string {
  const part = parsePart(name);
  if (part?.at === 'mid') return say('named.rail-mid', { k: part.k }, language);
  if (part?.at === 'numbered') return say('named.panel-k', { k: part.k }, language);
  const key = `named.${name}`;
  return hasWords(key) ? say(key, {}, language) : name;
}
