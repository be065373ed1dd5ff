import { unbroken } from '../length/unbroken.ts';
import { en } from './en.ts';

/** Every key that has words. */
export type WordKey = keyof typeof en;
/** What stands in a sentence’s braces, by name. */
export type Figures = Readonly<Record<string, string | number>>;

/** `pseudo` is English stretched and accented: it shows where a longer language would not fit. */
export type Language = 'en' | 'pseudo';

/** The languages there are. */
export const LANGUAGES = ['en', 'pseudo'] as const satisfies readonly Language[];

/** How each language writes dates. */
export const LOCALES: Readonly<Record<Language, string>> = { en: 'en-US', pseudo: 'en-US' };

let spoken: Language = 'en';

/** From now on words are said in this language where none is asked for. */
export function speak(language: Language): void {
  spoken = language;
}

/** The language that is spoken where none is asked for. */
export function spokenNow(): Language {
  return spoken;
}

/** Is there a sentence for this key? */
export function hasWords(key: string): key is WordKey {
  return Object.hasOwn(en, key);
}

/** The words for a key, its {figures} filled in, no number broken over two lines. A figure that is missing stays visible as its name in braces. */
export function say(key: WordKey, figures: Figures = {}, language: Language = spoken): string {
  const template: string = language === 'pseudo' ? stretched(en[key]) : en[key];
  return template.replace(/\{(\w+)\}/g, (whole, name: string) =>
    Object.hasOwn(figures, name) ? unbroken(String(figures[name])) : whole,
  );
}

/** The words for a count: those of `key.one` where it is one and there are such words. */
export function counted(key: WordKey, count: number, figures: Figures = {}, language?: Language): string {
  const one = `${key}.one`;
  return say(count === 1 && hasWords(one) ? one : key, { ...figures, count }, language);
}

const ACCENTS: Readonly<Record<string, string>> = {
  a: 'å',
  e: 'ë',
  i: 'ï',
  o: 'ø',
  u: 'ü',
  A: 'Å',
  E: 'Ë',
  O: 'Ø',
};

/** About 40 % longer, as German or Finnish would be; what stands in braces is left alone. */
function stretched(template: string): string {
  return template
    .split(/(\{\w+\})/)
    .map((run) =>
      run.startsWith('{')
        ? run
        : run.replace(/[aeiouAEO]/g, (v) => (ACCENTS[v] ?? v) + (/[aeou]/.test(v) ? v : '')),
    )
    .join('');
}
