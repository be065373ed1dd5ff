// @vitest-environment node

import 'fake-indexeddb/auto';
import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { shopAnswer } from '#core/api/shop-api.ts';
import { live } from '#ui/hub/live.svelte.ts';
import { shop } from '#ui/hub/shop.svelte.ts';
import { milled } from '../../main/store/small-shop.ts';
import { JOB, onTheWay, screenAtHub, settled, shopWithScreen, whileAway } from './screen-at-hub.ts';

screenAtHub();

const done = (code: string) => Object.keys(live.jobs.get('first')?.progress.parts[code]?.done ?? {});
/** These parts are shown as milled or not, once the screen has been told of it. */
const shown = (...milledOnes: readonly (readonly [code: string, milled: boolean])[]) =>
  vi.waitFor(
    () =>
      expect(milledOnes.map(([code]) => done(code))).toEqual(
        milledOnes.map(([, is]) => (is ? ['mill'] : [])),
      ),
    { timeout: 15_000 },
  );

test('back after a while, a screen is told what it missed, and asks for what people changed and for nothing else', async () => {
  const { hub, codes } = await shopWithScreen();
  const [one = '', two = '', three = ''] = codes;
  // Nothing was told to this screen yet: it goes on from what its greeting said.
  expect(await whileAway(hub, () => hub.hub.store.mark(milled(one)))).toEqual([]);
  await shown([one, true]);
  await hub.hub.store.mark(milled(two));
  await shown([two, true]);
  const file = JOB('second', '18');
  expect(
    await whileAway(hub, async () => {
      await hub.hub.store.mark(milled(three));
      expect((await hub.ask('PUT', '/jobs/second', { revision: 1, file })).status).toBe(200);
    }),
  ).toEqual(['/api/jobs', '/api/jobs/second', '/api/jobs/second/file', '/api/jobs/second/progress']);
  await shown([three, true]);
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
  await shown([one, true], [two, true]);
  expect((await hub.ask('POST', `/backups/${backup.name}/restore`, {})).status).toBe(200);
  await shown([one, true], [two, false]);

  const log = join(hub.data, 'log.jsonl');
  const kept = join(hub.data, 'kept-by-hand');
  copyFileSync(log, kept);
  await hub.hub.store.mark(milled(three));
  await shown([three, true]);
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
  await shown([one, true], [two, true], [three, false]);
});

test('a mark that is told while its job is still on the way is not lost', async () => {
  const { hub, codes } = await shopWithScreen();
  const [one = '', two = ''] = codes;
  await hub.hub.store.mark(milled(one));
  await shown([one, true]);
  live.jobs = new Map();
  onTheWay.set('/api/jobs/first/progress', async () => {
    await hub.hub.store.mark(milled(two));
    // Long enough for the screen to be told of it.
    await new Promise((later) => setTimeout(later, 150));
  });
  await live.reload();
  await settled();
  await shown([one, true], [two, true]);
});
