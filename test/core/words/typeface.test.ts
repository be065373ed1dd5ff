import fontkit from '@pdf-lib/fontkit';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { en } from '#core/words/en.ts';
import { LANGUAGES, say, type WordKey } from '#core/words/say.ts';

const root = join(import.meta.dirname, '..', '..', '..');
const styles = readFileSync(join(root, 'ui', 'theme.css'), 'utf8');
/** The files of the typeface as the screens load them. */
const faces = [...styles.matchAll(/url\('(@expo-google-fonts\/[^']+\.ttf)'\)/g)].map(([, path = '']) => path);
const drawn = faces.map(
  (path) => new Set(fontkit.create(readFileSync(join(root, 'node_modules', path))).characterSet),
);

/** The characters of a text that some face has no glyph for: a machine would take them from another typeface, or show a box. */
function strange(text: string): string[] {
  return [...new Set(text)].filter((one) => {
    const code = one.codePointAt(0) ?? 0;
    return code >= 32 && !drawn.every((face) => face.has(code));
  });
}

/** What a file may bring to a screen, a sticker or a paper: all of it but its comments. */
function withoutComments(source: string): string {
  return source.replace(/\/\*[^]*?\*\/|<!--[^]*?-->|^\s*\/\/.*$/gm, '');
}

test('the screens bring their typeface with them, in two weights', () => {
  expect(faces).toHaveLength(2);
  expect(styles).toMatch(/:root \{[^}]*font-family: 'Atkinson Hyperlegible'/);
});

test('the typeface has a glyph for every character of every word, in each language', () => {
  const keys = Object.keys(en) as WordKey[];
  const missing = LANGUAGES.flatMap((language) =>
    keys.flatMap((key) => strange(say(key, {}, language)).map((one) => `${language} ${key}: ${one}`)),
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
      strange(withoutComments(readFileSync(join(root, zone, name), 'utf8'))).map(
        (one) => `${zone}/${name}: ${one}`,
      ),
    );
    expect(missing).toEqual([]);
  },
);
