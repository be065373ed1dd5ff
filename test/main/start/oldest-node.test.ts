import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { z } from 'zod';

const root = join(import.meta.dirname, '..', '..', '..');
const json = (name: string): unknown => JSON.parse(readFileSync(join(root, name), 'utf8'));
const own = z.object({ engines: z.object({ node: z.string() }) }).parse(json('package.json'));
const { packages } = z
  .object({
    packages: z.record(
      z.string(),
      z.object({
        dev: z.boolean().optional(),
        engines: z.union([z.object({ node: z.string().optional() }), z.array(z.string())]).optional(),
      }),
    ),
  })
  .parse(json('package-lock.json'));

/** Is a whole release line of Node among those that a package names? */
function takes(range: string, major: number): boolean {
  return range.split('||').some((each) => {
    const [, sign = '', from = ''] = /^\s*(>=|\^|~|)\s*v?(\d+)/.exec(each) ?? [];
    return each.trim() === '*' || (sign === '>=' ? Number(from) <= major : Number(from) === major);
  });
}

test('every package that the program runs with takes the oldest Node that it names itself', () => {
  expect(own.engines.node).toBe('>=20');
  const needed = Object.entries(packages).filter(([name, { dev }]) => name !== '' && dev !== true);
  expect(needed.length).toBeGreaterThan(20);
  const refusing = needed.flatMap(([name, { engines }]) => {
    const range = engines === undefined || Array.isArray(engines) ? undefined : engines.node;
    return range === undefined || takes(range, 20) ? [] : [`${name} needs ${range}`];
  });
  expect(refusing).toEqual([]);
});
