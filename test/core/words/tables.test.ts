import { expect, test } from 'vitest';
import { en } from '#core/words/en.ts';
import { readingWords } from '#core/words/reading.ts';
import { type Language, LANGUAGES, tableOf } from '#core/words/languages.ts';

/**
 * What a language may still lack, by the beginnings of keys; it is then said in English. Where nothing stands here for a
 * language, it lacks nothing.
 */
const MAY_LACK: Readonly<Partial<Record<Language, readonly string[]>>> = {
  // The same English, but for what is spelled or called otherwise.
  'en-GB': [''],
  // The office’s jobs, their form and the shop’s page, the papers, and what is told of a file. Everything at a station and on a sticker is there.
  de: [
    ...Object.keys(readingWords),
    ...[
      'office.',
      'form.',
      'way.',
      'moisture.',
      'remove.',
      'print.',
      'cut.ask',
      'cut.stickers',
      'note-kind.',
      'api.',
    ],
    ...['told.text', 'told.job-dots', 'told.mark-twice', 'told.quantity', 'told.date', 'told.too-many'],
    ...['paper.title', 'paper.sheet', 'paper.step', 'paper.template', 'paper.rod', 'paper.tile'],
    ...['bin.', 'finished.', 'revisions.'],
    ...[
      'paper.calibration',
      'paper.made',
      'paper.count',
      'paper.no-',
      'paper.none',
      'paper.symbol',
      'paper.in-',
    ],
    ...['paper.first', 'paper.and-more', 'paper.for-'],
    ...['paper.check', 'paper.true-size', 'paper.join', 'paper.numbered', 'paper.pivot', 'paper.centre-line'],
    ...['paper.springing', 'paper.shoulder-line', 'paper.flats-line', 'paper.doors-unknown'],
  ],
};

const ENGLISH: Readonly<Partial<Record<string, string>>> = en;
const others = LANGUAGES.filter((language) => language !== 'en');

/** The forms in which a language tells a count, beyond the key itself. */
function formsOf(language: Language): string[] {
  const { pluralCategories } = new Intl.PluralRules(tableOf(language).locale).resolvedOptions();
  return pluralCategories.filter((form) => form !== 'other');
}

/** A form's key without its form: "cut.more.one" is of "cut.more". Null where it is no form of a counted key. */
function countedBy(key: string): string | null {
  const base = /^(.*)\.(zero|one|two|few|many|other)$/.exec(key)?.[1];
  return base !== undefined && ENGLISH[`${base}.one`] !== undefined ? base : null;
}

/** The keys that a language is to have: every one of English, each counted one in its own forms. */
function wantedBy(language: Language): string[] {
  return Object.keys(en).flatMap((key) => {
    if (countedBy(key) !== null) return [];
    const forms = ENGLISH[`${key}.one`] === undefined ? [] : formsOf(language);
    return [key, ...forms.map((form) => `${key}.${form}`)];
  });
}

const figuresOf = (words: string) => [...new Set(words.match(/\{\w+\}/g))].sort();

test.each(others)('the table of %s lacks nothing but what it is said here to lack', (language) => {
  const { words } = tableOf(language);
  const families = MAY_LACK[language] ?? [];
  const lacking = wantedBy(language).filter((key) => !Object.hasOwn(words, key));
  expect(lacking.filter((key) => !families.some((family) => key.startsWith(family)))).toEqual([]);
  // What is lacking no more is taken out of the list.
  expect(families.filter((family) => !lacking.some((key) => key.startsWith(family)))).toEqual([]);
});

test.each(others)(
  'the table of %s has no key that English has not, and each sentence the same figures',
  (language) => {
    const wrong = Object.entries(tableOf(language).words).flatMap(([key, words]) => {
      const base = countedBy(key);
      const english = ENGLISH[key] ?? (base === null ? undefined : ENGLISH[base]);
      if (english === undefined) return [`${key}: not in English`];
      const same = String(figuresOf(words)) === String(figuresOf(english));
      return same ? [] : [`${key}: ${words} | ${english}`];
    });
    expect(wrong).toEqual([]);
  },
);

test('what stands in the table of British English is otherwise in English', () => {
  const same = Object.entries(tableOf('en-GB').words).filter(([key, words]) => ENGLISH[key] === words);
  expect(same).toEqual([]);
});
