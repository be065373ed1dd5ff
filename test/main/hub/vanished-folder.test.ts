import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { expect, onTestFinished, test } from 'vitest';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { type LiveHub, liveHub } from './live-hub.ts';

/** A hub with a job, and what takes its folder away and brings it back. */
async function hubWithJob() {
  const live = await liveHub();
  const saved = await live.ask('POST', '/jobs', SMALL_JOB);
  const codes = (saved.body.parts as { code: string }[]).map(({ code }) => code);
  const away = `${live.data}-away`;
  onTestFinished(() => rmSync(away, { recursive: true, force: true }));
  return {
    live,
    codes,
    take: () => renameSync(live.data, away),
    bringBack: () => {
      rmSync(live.data, { recursive: true, force: true });
      renameSync(away, live.data);
    },
  };
}

/** Every kind of write, and how each is answered. */
async function everyWrite({ ask }: LiveHub, code: string) {
  const { revision, ...shop } = (await ask('GET', '/shop')).body;
  const file = (await ask('GET', '/jobs/boot-room/file')).body;
  return {
    shop: (await ask('PUT', '/shop', { revision, shop })).status,
    job: (await ask('PUT', '/jobs/boot-room', { revision: file.revision, file: SMALL_JOB })).status,
    backup: (await ask('POST', '/backups', {})).status,
    mark: (await ask('POST', '/marks', milled(code))).status,
    pin: (await ask('PUT', '/pin', { pin: null })).status,
  };
}

const NONE = { shop: 507, job: 507, backup: 507, mark: 507, pin: 507 };
const ALL = { shop: 200, job: 200, backup: 201, mark: 200, pin: 200 };

test('a data folder that vanished is made anew by nothing; no write is answered as taken until it is back', async () => {
  const { live, codes, take, bringBack } = await hubWithJob();
  take();
  for (const path of ['/health', '/backups', '/jobs', '/board', '/shop'])
    expect((await live.ask('GET', path)).status, path).toBe(200);
  expect(existsSync(live.data)).toBe(false);
  expect(await everyWrite(live, codes[0] ?? '')).toEqual(NONE);
  const told = await live.ask('PUT', '/pin', { pin: '1234' });
  expect(told.body.message).toContain('not the one that was opened (moved, removed or unmounted)');
  const taken = await live.ask('POST', '/import', '[');
  expect(taken.status).toBe(507);
  expect(existsSync(live.data)).toBe(false);
  bringBack();
  expect(await everyWrite(live, codes[0] ?? '')).toEqual(ALL);
});

test('another folder under the same name is not written into', async () => {
  const { live, codes, take, bringBack } = await hubWithJob();
  take();
  mkdirSync(live.data);
  mkdirSync(`${live.data}/jobs`);
  expect(await everyWrite(live, codes[0] ?? '')).toEqual(NONE);
  expect(readdirSync(live.data, { recursive: true })).toEqual(['jobs']);
  bringBack();
  expect(await everyWrite(live, codes[0] ?? '')).toEqual(ALL);
});

test('a hub that ends leaves the lock of one that was started on another folder under the same name', async () => {
  const { live, take, bringBack } = await hubWithJob();
  const old = live.hub;
  take();
  mkdirSync(live.data);
  const other = JSON.stringify({ pid: 1, started: 'long ago', boot: 'another' });
  writeFileSync(`${live.data}/lock-1.json`, other);
  await old.stop();
  expect(readdirSync(live.data)).toEqual(['lock-1.json']);
  bringBack();
  // Of a process that lives on, which only a test's does.
  rmSync(`${live.data}/lock-1.json`);
  await live.start();
  expect((await live.ask('GET', '/jobs/boot-room')).status).toBe(200);
});
