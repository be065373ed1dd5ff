import { type Language, LANGUAGES } from '#core/words/languages.ts';
import { speak } from '#core/words/say.ts';

const REMEMBERED = 'shoulderline.language';

/**
 * The language of this screen: the one that the address names (`?language=…`), which is remembered, or else the one
 * that was remembered, or else English. A name that is no language changes nothing.
 */
export function chooseLanguage(search: string, kept: Pick<Storage, 'getItem' | 'setItem'>): Language {
  const named = languageOf(new URLSearchParams(search).get('language'));
  if (named !== undefined) kept.setItem(REMEMBERED, named);
  const chosen = named ?? languageOf(kept.getItem(REMEMBERED)) ?? 'en';
  speak(chosen);
  return chosen;
}

function languageOf(name: string | null): Language | undefined {
  return LANGUAGES.find((language) => language === name);
}
