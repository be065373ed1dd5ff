import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '..');
const textOf = (file: string) => readFileSync(join(root, file), 'utf8');

/** The titles of the tests in a file: the first text after `test(`, or after the cases of `test.each(…)(`. */
function titlesOf(file: string): string[] {
  return [...textOf(file).matchAll(/^(?: *test\(|[^\n]*\)\()\s*(['`])(.+?)\1,/gm)].map(
    ([, , title = '']) => title,
  );
}

test.each(['published/published-values.test.ts', 'labels/pdf/symbol.test.ts'])(
  '%s says of each check where its value is from: looked up, from memory, or reckoned',
  (file) => {
    const titles = titlesOf(file);
    expect(titles.length).toBe(textOf(file).match(/^ *test(\.each)?\(/gm)?.length);
    expect(titles.filter((title) => !/looked up|from memory|reckoned|by definition/.test(title))).toEqual([]);
  },
);

test('the door of common practice claims nothing for all doors and all times', () => {
  expect(textOf('core/planning/common-practice.test.ts')).not.toMatch(/\balways\b/i);
});
