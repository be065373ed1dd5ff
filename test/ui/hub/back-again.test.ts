// @vitest-environment node

import 'fake-indexeddb/auto';
import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { shopAnswer } from '#core/api/shop-api.ts';
import { live } from '#ui/hub/live.svelte.ts';
import { shop } from '#ui/hub/shop.svelte.ts';
import { type LiveHub, liveHub } from '../../main/hub/live-hub.ts';
import { milled } from '../../main/store/small-shop.ts';
import { FetchedEvents } from './fetched-events.ts';

const JOB = (id: string, width = '16') => ({
  format: 1,
  id,
  job: id,
  units: 'in',
  doors: [{ mark: 'A', quantity: 2, opening: { width, height: '30' } }],
});

/** What the screen asked for, but for the stream. */
const asked: string[] = [];
let url = '';
const { fetch: real } = globalThis;

beforeAll(() => {
  vi.stubGlobal('EventSource', FetchedEvents);
  vi.stubGlobal('fetch', (path: string, options?: RequestInit) => {
    if (!path.startsWith('/')) return real(path, options);
    if (!path.startsWith('/api/events')) asked.push(path);
    return real(`${url}${path}`, options);
  });
});
afterAll(() => {
  vi.unstubAllGlobals();
});

const NOWHERE = 'http://127.0.0.1:9';

/** A hub with two jobs, and this screen at it. */
async function shopWithScreen(): Promise<{ readonly hub: LiveHub; readonly codes: readonly string[] }> {
  vi.spyOn(Math, 'random').mockReturnValue(0);
  const hub = await liveHub();
  const { body } = await hub.ask('POST', '/jobs', JOB('first'));
  await hub.ask('POST', '/jobs', JOB('second'));
  const codes = (body.parts as { code: string }[]).map(({ code }) => code);
  await hub.hub.store.mark(milled(codes.at(-1) ?? ''));
  url = hub.hub.url;
  live.start();
  await vi.waitFor(() => expect([...live.jobs.keys()]).toEqual(['first', 'second']), { timeout: 5000 });
  await settled();
  return { hub, codes };
}

/** Waits until the screen has its stream and asks for nothing more. */
async function settled(): Promise<void> {
  await vi.waitFor(
    async () => {
      const before = asked.length;
      await new Promise((later) => setTimeout(later, 150));
      expect([live.away, asked.length]).toEqual([false, before]);
    },
    { timeout: 5000, interval: 10 },
  );
}

/** The hub is away while something happens in it; what the screen asks for when it is back. */
async function whileAway(
  hub: LiveHub,
  happens: () => Promise<unknown>,
  between?: () => void,
): Promise<string[]> {
  url = NOWHERE;
  await hub.hub.stop();
  between?.();
  await vi.waitFor(() => expect(live.away).toBe(true), { timeout: 5000 });
  await hub.start();
  await happens();
  asked.length = 0;
  url = hub.hub.url;
  await vi.waitFor(() => expect(live.away).toBe(false), { timeout: 5000 });
  await settled();
  return asked.filter((path) => path !== '/api/health' && path !== '/api/shop');
}

const done = (code: string) => Object.keys(live.jobs.get('first')?.progress.parts[code]?.done ?? {});

test('back after a while, a screen is told what it missed, and asks for what people changed and for nothing else', async () => {
  const { hub, codes } = await shopWithScreen();
  const [one = '', two = '', three = ''] = codes;
  // Nothing was told to this screen yet: it goes on from what its greeting said.
  expect(await whileAway(hub, () => hub.hub.store.mark(milled(one)))).toEqual([]);
  expect(done(one)).toEqual(['mill']);
  await hub.hub.store.mark(milled(two));
  await vi.waitFor(() => expect(done(two)).toEqual(['mill']));
  const file = JOB('second', '18');
  expect(
    await whileAway(hub, async () => {
      await hub.hub.store.mark(milled(three));
      expect((await hub.ask('PUT', '/jobs/second', { revision: 1, file })).status).toBe(200);
    }),
  ).toEqual(['/api/jobs', '/api/jobs/second', '/api/jobs/second/file', '/api/jobs/second/progress']);
  expect(done(three)).toEqual(['mill']);
  expect(live.jobs.get('second')?.file).toMatchObject({ doors: [{ opening: { width: '18' } }] });
  expect(await whileAway(hub, () => hub.ask('DELETE', '/jobs/second'))).toEqual(['/api/jobs', '/api/bin']);
  expect([...live.jobs.keys()]).toEqual(['first']);
  const { revision, ...now } = shopAnswer.parse((await hub.ask('GET', '/shop')).body);
  const before = live.stickerNews;
  expect(
    await whileAway(hub, async () => {
      expect((await hub.ask('PUT', '/shop', { revision, shop: { ...now, name: 'Millbrook' } })).status).toBe(
        200,
      );
    }),
  ).toEqual([]);
  await vi.waitFor(() => expect(shop.now?.name).toBe('Millbrook'));
  // What was printed meanwhile nobody told.
  expect(live.stickerNews).toBeGreaterThan(before);
});

test('marks that other data took away are shown no more: put back by the office, or the folder changed by hand', async () => {
  const { hub, codes } = await shopWithScreen();
  const [one = '', two = '', three = ''] = codes;
  await hub.hub.store.mark(milled(one));
  const backup = (await hub.ask('POST', '/backups', {})).body as { name: string };
  await hub.hub.store.mark(milled(two));
  await vi.waitFor(() => expect([...done(one), ...done(two)]).toEqual(['mill', 'mill']));
  expect((await hub.ask('POST', `/backups/${backup.name}/restore`, {})).status).toBe(200);
  await vi.waitFor(() => expect(done(two)).toEqual([]), { timeout: 5000 });
  expect(done(one)).toEqual(['mill']);

  const log = join(hub.data, 'log.jsonl');
  const kept = join(hub.data, 'kept-by-hand');
  copyFileSync(log, kept);
  await hub.hub.store.mark(milled(three));
  await vi.waitFor(() => expect(done(three)).toEqual(['mill']));
  await whileAway(
    hub,
    async () => {
      await hub.hub.store.mark(milled(two));
    },
    () => {
      copyFileSync(kept, log);
      rmSync(join(hub.data, 'snapshot.json'), { force: true });
    },
  );
  expect([done(one), done(two), done(three)]).toEqual([['mill'], ['mill'], []]);
});
