import { expect, test } from 'vitest';
import { liveHub } from './live-hub.ts';

const JOB = {
  format: 1,
  id: 'hall',
  job: 'Hall',
  units: 'in',
  doors: [
    { mark: 'A', quantity: 2, opening: { width: '16', height: '12' }, horn: '0' },
    { mark: 'B', opening: { width: '18', height: '30' } },
  ],
};

test('an answer out of a plan has a tag; who has it is told so, until something of it may be another', async () => {
  const { ask, restart } = await liveHub();
  await ask('POST', '/jobs', JOB);
  const tags = new Map<string, string>();
  const PATHS = ['/jobs/hall', '/jobs/hall?why=1', '/jobs/hall/doors/A-1', '/jobs/hall/doors/A-1?why=1'];
  const look = async (path: string, language = 'en') => {
    const known = tags.get(path) ?? '"none"';
    const { status, headers, body } = await ask('GET', path, undefined, {
      'if-none-match': `"other", W/${known}`,
      'accept-language': language,
    });
    tags.set(path, headers.get('etag') ?? '');
    if (status === 304) expect(body).toEqual({ text: '' });
    return status;
  };
  const all = async (language?: string) => {
    const statuses: number[] = [];
    for (const path of PATHS) statuses.push(await look(path, language));
    return statuses;
  };
  const [KNOWN, OTHER] = [PATHS.map(() => 304), PATHS.map(() => 200)];
  expect(await all()).toEqual(OTHER);
  expect(new Set(tags.values()).size).toBe(PATHS.length);
  for (const tag of tags.values()) expect(tag).toMatch(/^"1-[\w-]{22}"$/);
  expect(await all()).toEqual(KNOWN);
  expect(await all('de')).toEqual(OTHER);
  expect(await all()).toEqual(OTHER);

  const { parts } = (await ask('GET', '/jobs/hall/doors/B-1')).body as { parts: { code: string }[] };
  const mark = (kind: string, n: number) =>
    ask('POST', '/marks', {
      id: `11111111-0000-4000-8000-00000000000${n}`,
      code: parts[0]?.code,
      station: 'milling',
      stage: 'mill',
      mark: kind,
      at: new Date().toISOString(),
    });
  expect((await mark('done', 1)).status).toBe(200);
  expect(await all()).toEqual(KNOWN);
  expect((await mark('spoiled', 2)).status).toBe(200);
  expect(await all()).toEqual(OTHER);

  await restart();
  expect(await all()).toEqual(KNOWN);
  const [first, second] = JOB.doors;
  const doors = [first, { ...second, opening: { width: '19', height: '30' } }];
  expect((await ask('PUT', '/jobs/hall', { revision: 1, file: { ...JOB, doors } })).status).toBe(200);
  expect(await all()).toEqual(OTHER);
  expect(await all()).toEqual(KNOWN);
  expect((await ask('GET', '/jobs/hall', undefined, { 'if-none-match': '*' })).status).toBe(304);
  expect((await ask('GET', '/jobs/hall/doors/C-1', undefined, { 'if-none-match': '*' })).status).toBe(404);
});
