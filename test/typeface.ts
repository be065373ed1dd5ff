import fontkit from '@pdf-lib/fontkit';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const root = join(import.meta.dirname, '..');
/** The styles of all screens, which bring the typeface. */
export const STYLES = readFileSync(join(root, 'ui', 'theme.css'), 'utf8');
/** The files of the typeface as the screens load them. */
export const FACES = [...STYLES.matchAll(/url\('(@expo-google-fonts\/[^']+\.ttf)'\)/g)].map(
  ([, path = '']) => path,
);
const drawn = FACES.map(
  (path) => new Set(fontkit.create(readFileSync(join(root, 'node_modules', path))).characterSet),
);

/** The characters of a text that some face has no glyph for: a machine would take them from another typeface, or show a box. */
export function withoutGlyph(text: string): string[] {
  return [...new Set(text)].filter((one) => {
    const code = one.codePointAt(0) ?? 0;
    return code >= 32 && !drawn.every((face) => face.has(code));
  });
}
