// @vitest-environment node
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { HAND_SIZES } from '#ui/shared/hand.svelte.ts';

const UI = join(import.meta.dirname, '..', '..', '..', 'ui');
/** The sizes that a stylesheet or a component asks for, each with its file. */
const asked = readdirSync(UI, { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.(svelte|css)$/.test(file))
  .flatMap((file) =>
    [...readFileSync(join(UI, file), 'utf8').matchAll(/@media ([^{]*(?:width|height)[^{]*) \{/g)].map(
      ([, size = '']) => ({ file, size }),
    ),
  );

test('screens are laid out anew at the sizes that have a name, and at no other', () => {
  const named: readonly string[] = Object.values(HAND_SIZES);
  expect(asked.filter(({ size }) => !named.includes(size))).toEqual([]);
});

test('no size has a name for nothing', () => {
  const used = new Set(asked.map(({ size }) => size));
  expect(Object.values(HAND_SIZES).filter((size) => !used.has(size))).toEqual([]);
});
