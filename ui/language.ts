import { isLanguage, type Language } from '#core/words/languages.ts';

const REMEMBERED = 'shoulderline.language';

/** The first language that the browser asks for and that there is: for what is shown before the shop can be asked, or where it is not to be. */
export function languageOfBrowser(): Language {
  return navigator.languages.map((each) => each.slice(0, 2)).find(isLanguage) ?? 'en';
}

/**
 * The language of this screen: the one that the address names (`?language=…`), which is remembered, or else the one
 * that was remembered, or else the shop's, or else English. A name that is no language changes nothing; none at all
 * (`?language=`) forgets the remembered one.
 */
export function chosenLanguage(
  search: string,
  kept: Pick<Storage, 'getItem' | 'setItem'>,
  ofShop: () => Language | undefined,
): () => Language {
  const asked = new URLSearchParams(search).get('language');
  if (asked === '' || (asked !== null && isLanguage(asked))) kept.setItem(REMEMBERED, asked);
  const own = kept.getItem(REMEMBERED) ?? '';
  return isLanguage(own) ? () => own : () => ofShop() ?? 'en';
}
