import { isLanguage, type Language } from '#core/words/languages.ts';

/** The language that this machine is set to, where the program has it; else English. No shop is there yet to ask for its own. */
export function machineLanguage(tag = Intl.DateTimeFormat().resolvedOptions().locale): Language {
  const [language = ''] = tag.split('-');
  return isLanguage(tag) ? tag : isLanguage(language) ? language : 'en';
}
