import { de } from './de.ts';
import { enGB } from './en-gb.ts';
import { en } from './en.ts';
import type { LanguageTable } from './language.ts';
import { pseudo } from './pseudo.ts';

/** The languages there are, each by its tag. A language is added here, by its table. */
export const TABLES = {
  en: { name: 'English', locale: 'en-US', firstDay: 0, words: en },
  'en-GB': enGB,
  de,
  pseudo,
} as const satisfies Readonly<Record<string, LanguageTable>>;

/** A language by its tag. */
export type Language = keyof typeof TABLES;

/** Is there a language of this tag? */
export function isLanguage(tag: string): tag is Language {
  return Object.hasOwn(TABLES, tag);
}

/** Their tags. */
export const LANGUAGES: readonly Language[] = Object.keys(TABLES).filter(isLanguage);

/** A language's table. */
export function tableOf(language: Language): LanguageTable {
  return TABLES[language];
}
