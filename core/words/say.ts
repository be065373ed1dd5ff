import { unbroken } from '../length/unbroken.ts';
import { en } from './en.ts';
import type { WordKey } from './language.ts';
import { type Language, LANGUAGES, tableOf } from './languages.ts';

export type { Language, WordKey };

/** A text as somebody typed it or is to type it: it stands in a sentence letter by letter. */
export interface AsTyped {
  readonly typed: string;
}

/** What stands in a sentence’s braces, by name. */
export type Figures = Readonly<Record<string, string | number | AsTyped>>;

/** The words of every language, English where it has none of its own. */
const WORDS = new Map(LANGUAGES.map((language) => [language, { ...en, ...tableOf(language).words }]));
const RULES = new Map(
  LANGUAGES.map((language) => [language, new Intl.PluralRules(tableOf(language).locale)]),
);

let spoken: () => Language = () => 'en';

/** From now on words are said in this language where none is asked for. */
export function speak(language: Language): void {
  spoken = () => language;
}

/** From now on whoever is given here is asked each time in which language words are said where none is asked for. */
export function speakAs(chosen: () => Language): void {
  spoken = chosen;
}

/** The language that is spoken where none is asked for. */
export function spokenNow(): Language {
  return spoken();
}

/** Is there a sentence for this key? */
export function hasWords(key: string): key is WordKey {
  return Object.hasOwn(en, key);
}

/** The words for a key, its {figures} filled in, no number broken over two lines. A figure that is missing stays visible as its name in braces. */
export function say(key: WordKey, figures: Figures = {}, language: Language = spokenNow()): string {
  return filled((WORDS.get(language) ?? en)[key], figures);
}

/** The words for a count: those of its form in the language (`key.one`, `key.few`), of the key itself where it has none. */
export function counted(
  key: WordKey,
  count: number,
  figures: Figures = {},
  language: Language = spokenNow(),
): string {
  const own = Object.hasOwn(tableOf(language).words, key) ? language : 'en';
  const words: Readonly<Partial<Record<string, string>>> = tableOf(own).words;
  const form = `${key}.${RULES.get(own)?.select(count) ?? 'other'}`;
  return filled(words[form] ?? words[key] ?? en[key], { ...figures, count });
}

function filled(words: string, figures: Figures): string {
  return words.replace(/\{(\w+)\}/g, (whole, name: string) => {
    const figure = Object.hasOwn(figures, name) ? figures[name] : undefined;
    if (figure === undefined) return whole;
    return typeof figure === 'object' ? figure.typed : unbroken(String(figure));
  });
}
