import { en } from './en.ts';
import type { LanguageTable } from './language.ts';

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

/** English stretched and accented: it shows where a longer language would not fit, and what is said past the tables. */
export const pseudo: LanguageTable = {
  locale: 'en-US',
  firstDay: 0,
  words: Object.fromEntries(Object.entries(en).map(([key, words]) => [key, stretched(words)])),
};

/** About 40 % longer, as German or Finnish would be; what stands in braces is left alone. */
function stretched(words: string): string {
  return words
    .split(/(\{\w+\})/)
    .map((run) =>
      run.startsWith('{')
        ? run
        : run.replace(/[aeiouAEO]/g, (v) => (ACCENTS[v] ?? v) + (/[aeou]/.test(v) ? v : '')),
    )
    .join('');
}
