import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ACCENT } from '#core/drawing/svg.ts';

const css = readFileSync(join(import.meta.dirname, '..', '..', 'ui', 'theme.css'), 'utf8');

/** A colour of the theme, through those that it is made of. */
function colour(name: string): string {
  const value = new RegExp(`--${name}:\\s*([^;]+);`).exec(css)?.[1] ?? '';
  const other = /^var\(--([\w-]+)\)$/.exec(value)?.[1];
  if (other !== undefined) return colour(other);
  if (!/^#([\da-f]{3}|[\da-f]{6})$/.test(value)) throw new Error(`--${name} is no colour: ${value}`);
  return value.length === 4 ? value.replace(/[\da-f]/g, '$&$&') : value;
}

/** WCAG 2.2, relative luminance and contrast ratio (from memory). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = (hex.match(/[\da-f]{2}/g) ?? []).map((part) => {
    const share = Number.parseInt(part, 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}
function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

test('the contrast is reckoned right: black on white is 21, #777 on white just under 4.5', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.478, 3);
});

test.each(['ink', 'quiet', 'accent', 'cut'])(
  'words in --%s stand out 7 to 1 on paper and on the wash',
  (name) => {
    for (const ground of ['paper', 'wash'])
      expect(contrast(colour(name), colour(ground)), ground).toBeGreaterThanOrEqual(7);
  },
);

test('paper on the accent is read as well, and the accent is told from ink beside it', () => {
  expect(contrast(colour('paper'), colour('accent'))).toBeGreaterThanOrEqual(7);
  expect(contrast(colour('accent'), colour('ink'))).toBeGreaterThanOrEqual(2);
});

test('the accent is a red, but not the pure one of a screen', () => {
  const [red = 0, green = 0, blue = 0] = (colour('accent').match(/[\da-f]{2}/g) ?? []).map((part) =>
    Number.parseInt(part, 16),
  );
  expect(red).toBeGreaterThan(3 * Math.max(green, blue));
  expect(Math.min(green, blue)).toBeGreaterThan(0);
});

test('drawings cut in the same red', () => {
  expect(ACCENT).toBe(colour('accent'));
});
