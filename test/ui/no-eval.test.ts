// @vitest-environment node
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';

const ui = join(import.meta.dirname, '..', '..', 'ui');

/** The scripts that the pages begin with. */
function entries(): string[] {
  return readdirSync(ui, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.html'))
    .map((name) => /<script[^>]* src="([^"]+)"/.exec(readFileSync(join(ui, name), 'utf8'))?.[1] ?? '')
    .map((address) => join(ui, '..', address));
}

test('every page of the screens tells zod to make no code from text before it makes a schema', () => {
  expect(entries().length).toBeGreaterThanOrEqual(2);
  for (const entry of entries()) {
    const first = /^import (?:[^;]*?from )?'([^']+)';/m.exec(readFileSync(entry, 'utf8'))?.[1] ?? '';
    expect(join(dirname(entry), first), entry).toBe(join(ui, 'no-eval.ts'));
  }
});
