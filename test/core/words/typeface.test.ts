import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { en } from '#core/words/en.ts';
import { LANGUAGES } from '#core/words/languages.ts';
import { say, type WordKey } from '#core/words/say.ts';
import { FACES, STYLES, withoutGlyph } from '../../typeface.ts';

const root = join(import.meta.dirname, '..', '..', '..');

/** What a file may bring to a screen, a sticker or a paper: all of it but its comments. */
function withoutComments(source: string): string {
  return source.replace(/\/\*[^]*?\*\/|<!--[^]*?-->|^\s*\/\/.*$/gm, '');
}

test('the screens bring their typeface with them, in two weights', () => {
  expect(FACES).toHaveLength(2);
  expect(STYLES).toMatch(/:root \{[^}]*font-family: 'Atkinson Hyperlegible'/);
});

test('the typeface has a glyph for every character of every word, in each language', () => {
  const keys = Object.keys(en) as WordKey[];
  const missing = LANGUAGES.flatMap((language) =>
    keys.flatMap((key) => withoutGlyph(say(key, {}, language)).map((one) => `${language} ${key}: ${one}`)),
  );
  expect(missing).toEqual([]);
});

test.each(['core', 'labels', 'main', 'ui'])(
  'nothing that %s could show has a character without a glyph',
  (zone) => {
    const files = readdirSync(join(root, zone), { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.(ts|svelte|css|html|json)$/.test(name),
    );
    expect(files.length).toBeGreaterThan(10);
    const missing = files.flatMap((name) =>
      withoutGlyph(withoutComments(readFileSync(join(root, zone, name), 'utf8'))).map(
        (one) => `${zone}/${name}: ${one}`,
      ),
    );
    expect(missing).toEqual([]);
  },
);
