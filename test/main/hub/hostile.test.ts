import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { harmless, hostile, send } from '../../proof/hostile.ts';
import { freshFolder } from '../store/fresh-folder.ts';
import { SMALL_JOB } from '../store/small-shop.ts';
import { liveHub, rawStatus } from './live-hub.ts';

test('five hundred hostile requests are refused with 4xx, and the hub lives and knows what it knew', async () => {
  const live = await liveHub();
  const { url } = live.hub;
  await live.ask('POST', '/jobs', SMALL_JOB);
  const statuses = new Map<number, number>();
  await fc.assert(
    fc.asyncProperty(hostile, async (asked) => {
      const status = await send(url, asked);
      statuses.set(status, (statuses.get(status) ?? 0) + 1);
      if (!harmless(asked) || status >= 300 || status === 0)
        expect(
          status === 0 || (status >= 400 && status < 500),
          `${asked.method} ${asked.path}: ${status}`,
        ).toBe(true);
    }),
    { numRuns: 500 },
  );
  expect(statuses.get(0) ?? 0).toBeLessThan(50);
  expect(statuses.size).toBeGreaterThan(4);
  expect((await live.ask('GET', '/jobs')).body.jobs).toHaveLength(1);
  expect((await live.ask('GET', '/session')).body).toEqual({ pin: false, open: true });
}, 60_000);

test.each(['http://example.org', 'null', 'https://127.0.0.1', 'http://localhost'])(
  'a page of %s is refused',
  async (origin) => {
    const { hub } = await liveHub();
    const json = { 'content-type': 'application/json', origin };
    expect(await rawStatus(hub.url, '/api/health', { origin })).toBe(403);
    expect(await rawStatus(hub.url, '/api/marks', json, 'POST', '{}')).toBe(403);
  },
);

test.each(['example.org', '127.0.0.1', '127.0.0.1:1', 'localhost.example.org', '10.0.0.1:80'])(
  'the host %s is not served, whatever its name leads to',
  async (host) => {
    const { hub } = await liveHub();
    expect(await rawStatus(hub.url, '/api/health', { host })).toBe(421);
  },
);

test.each(['cross-site', 'same-site'])(
  'what a %s page makes a browser ask does no work, whatever it asks; a link to a page is followed',
  async (site) => {
    const ui = freshFolder();
    mkdirSync(join(ui, 'ui'));
    writeFileSync(join(ui, 'ui', 'index.html'), '<!doctype html>');
    const { hub } = await liveHub({ ui });
    const asked = (path: string, mode: string, dest: string, method = 'GET') =>
      rawStatus(
        hub.url,
        path,
        {
          'sec-fetch-site': site,
          'sec-fetch-mode': mode,
          'sec-fetch-dest': dest,
          ...(method === 'GET' ? {} : { 'content-type': 'application/json' }),
        },
        method,
        method === 'GET' ? '' : '{}',
      );
    for (const path of [
      '/api/health',
      '/api/jobs/boot-room/stickers.pdf',
      '/api/events',
      '/api',
      '/api?x=1',
    ]) {
      expect(await asked(path, 'no-cors', 'image'), path).toBe(403);
      expect(await asked(path, 'navigate', 'document'), path).toBe(403);
    }
    expect(await asked('/api/backups', 'no-cors', 'empty', 'POST')).toBe(403);
    expect(await asked('/board', 'navigate', 'document')).toBe(200);
    expect(await asked('/board', 'navigate', 'iframe')).toBe(403);
    expect(await asked('/board', 'no-cors', 'script')).toBe(403);
    expect(await asked('/board', 'navigate', 'document', 'POST')).toBe(403);
  },
);

test.each(['same-origin', 'none'])(
  'what comes from the hub’s own page or from a person (%s) is served',
  async (site) => {
    const { hub } = await liveHub();
    expect(await rawStatus(hub.url, '/api/health', { 'sec-fetch-site': site })).toBe(200);
  },
);

test('the hub’s own page is served under each of its names', async () => {
  const { hub } = await liveHub();
  const { port } = new URL(hub.url);
  for (const host of [`127.0.0.1:${port}`, `localhost:${port}`, `[::1]:${port}`, `LOCALHOST:${port}`])
    expect(await rawStatus(hub.url, '/api/health', { host, origin: `http://${host}` })).toBe(200);
});

test('every answer forbids what does not come from here, refusals too', async () => {
  const { ask } = await liveHub();
  for (const path of ['/health', '/nowhere', '/parts/hello', '/%zz']) {
    const { headers } = await ask('GET', path);
    expect(headers.get('content-security-policy'), path).toMatch(/^default-src 'none'; script-src 'self'/);
    expect(headers.get('x-content-type-options'), path).toBe('nosniff');
  }
});

test('a wrong method says which are right', async () => {
  const { ask } = await liveHub();
  const told = await ask('DELETE', '/board');
  expect([told.status, told.headers.get('allow')]).toEqual([405, 'GET']);
});
