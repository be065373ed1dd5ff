import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import type { PrintedFit } from '#core/fit/print-fit.ts';
import { freshFolder } from '../store/fresh-folder.ts';

/** The command would end the process; here it ends itself alone, with its exit code and what it says on stderr. */
class Ended extends Error {
  readonly code: number;
  constructor(code: number, said: string) {
    super(said);
    this.code = code;
  }
}
vi.mock('#main/commands/end-with.ts', () => ({
  endWith: (code: number, said: string): never => {
    throw new Ended(code, said);
  },
}));
const argv = process.argv;
afterEach(() => {
  process.argv = argv;
  vi.restoreAllMocks();
});

function file(name: string, content: unknown): string {
  const path = join(freshFolder(), name);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}
const job = (units: 'in' | 'mm', door: object = {}) =>
  file('job.json', {
    format: 1,
    job: 'Rope walk',
    units,
    doors: [
      {
        mark: 'A',
        opening: units === 'in' ? { width: '16', height: '30' } : { width: '400', height: '760' },
        ...door,
      },
    ],
  });

/** Runs the command with these arguments: what it prints on stdout, its exit code, and what it says on stderr. */
async function fit(...args: string[]): Promise<{ out: string; code: number; said: string }> {
  process.argv = ['node', 'fit', ...args];
  let out = '';
  vi.spyOn(process.stdout, 'write').mockImplementation((text) => {
    out += String(text);
    return true;
  });
  vi.resetModules();
  try {
    await import('#main/commands/fit.ts');
    return { out, code: 0, said: '' };
  } catch (error) {
    if (!(error instanceof Ended)) throw error;
    return { out, code: error.code, said: error.message };
  }
}
const read = (out: string): PrintedFit => JSON.parse(out) as PrintedFit; // Its own printed form.

test('a job’s doors are told in a table, warnings first, in plain spaces', async () => {
  const { out, code } = await fit(job('in'));
  expect(code).toBe(0);
  const [heading, warning, ...rest] = out.split('\n');
  expect(heading).toBe('A-1 (inches)');
  expect(warning).toMatch(/^! Tenon loose in its groove: do not count on it\./);
  expect(rest.find((line) => line.startsWith('Haunch to the floor'))).toMatch(/ 1\/32 .*1\/64 to 3\/64/);
  expect(out).not.toMatch(/\u00a0/);
});

test('--json prints exact figures, by the built-in ± of the job’s units or by a profile’s own', async () => {
  const usual = read((await fit(job('in'), '--json')).out);
  expect(usual).toMatchObject({ format: 1, job: 'Rope walk', units: 'in', tolerances: { fence: '1/128' } });
  expect(usual.kinds[0]?.closures.find(({ id }) => id === 'haunch')?.worst).toEqual({
    least: '1/64',
    most: '3/64',
  });
  expect(read((await fit(job('mm'), '--json')).out).tolerances.stop).toBe('2/5');
  const profile = file('shop.json', { tolerances: { height: '0' } });
  const exact = read((await fit(job('in'), '--json', '--profile', profile)).out);
  expect(exact.tolerances).toMatchObject({ fence: '1/128', height: '0' });
  // Groove and notch are both heights.
  expect(exact.kinds[0]?.closures.find(({ id }) => id === 'haunch')?.worst).toEqual({
    least: '1/32',
    most: '1/32',
  });
});

test.each<[string, () => string[], RegExp]>([
  ['no job', () => [], /^fit: expected JOB\.json/],
  ['two jobs', () => [job('in'), job('in')], /^fit: expected JOB\.json/],
  ['an option that it has not', () => [job('in'), '--settable', '1/32'], /^fit: expected JOB\.json/],
  ['a file that is not there', () => [join(freshFolder(), 'none.json')], /none\.json: /],
  ['a file that is not JSON', () => [file('job.json', '{')], /job\.json: /],
  [
    'a door that cannot be made',
    () => [job('in', { stile: { width: '1' } })],
    /^doors\[0\]\.tenon\.length: /,
  ],
  [
    'a profile with a fault',
    () => [job('in'), '--profile', file('shop.json', { tolerances: { fence: '-1' } })],
    /tolerances\.fence: /,
  ],
])('%s ends it with exit code 2 and nothing on stdout', async (_, args, words) => {
  const { out, code, said } = await fit(...args());
  expect({ out, code }).toEqual({ out: '', code: 2 });
  expect(said).toMatch(words);
});
