import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Backups } from '#main/store/archive/backups.ts';
import { ElsewhereBackups, SIGN_NAME } from '#main/store/archive/elsewhere.ts';
import { disk } from '#main/store/files/disk.ts';
import type { FilePort } from '#main/store/files/file-port.ts';
import { liveHub } from '../../hub/live-hub.ts';
import { freshFolder } from '../fresh-folder.ts';
import { milled, partsOf, SMALL_JOB, smallShop } from '../small-shop.ts';

const DAY = 86_400_000;
const backupsIn = (folder: string) => readdirSync(folder).filter((name) => name.endsWith('.json.gz'));

/** A shop with a stick; `there` is the stick's file system. */
async function shopWithStick(there: FilePort = disk, stepMs = 20_000) {
  const [data, stick] = [freshFolder(), freshFolder()];
  const store = await smallShop(data);
  const backups = new Backups(disk, data);
  let now = Date.now();
  const options = { now: () => now, stepMs };
  const open = () => ElsewhereBackups.open(disk, there, data, backups, () => 3, options);
  const elsewhere = await open();
  return {
    data,
    stick,
    store,
    open,
    elsewhere,
    later: (ms: number) => (now += ms),
    make: () => backups.make(store, 'test', 3),
  };
}

test('each backup comes to lie there too, byte for byte, as many as are kept, and nothing half', async () => {
  const { data, stick, elsewhere, make, store } = await shopWithStick();
  expect(await elsewhere.name(stick)).toBeNull();
  for (let k = 0; k < 5; k += 1) {
    await make();
    await elsewhere.look();
  }
  const own = backupsIn(join(data, 'backups'));
  expect(own).toHaveLength(3);
  expect(readdirSync(stick).sort()).toEqual([...own, SIGN_NAME].sort());
  for (const name of own)
    expect(readFileSync(join(stick, name)).equals(readFileSync(join(data, 'backups', name)))).toBe(true);
  expect(elsewhere.troubles).toEqual([]);
  await store.close();
});

test('a stick that is gone is told, its empty folder is not taken for it, and what it missed it gets when it is back', async () => {
  const { stick, elsewhere, make, open, store } = await shopWithStick();
  await elsewhere.name(stick);
  renameSync(stick, `${stick}-out`);
  await elsewhere.look();
  expect(elsewhere.troubles).toMatchObject([{ code: 'backup-gone', figures: { folder: stick } }]);
  mkdirSync(stick);
  await make();
  const next = await open();
  await next.look();
  expect(next.troubles).toMatchObject([{ code: 'backup-gone', figures: { folder: stick } }]);
  expect(readdirSync(stick)).toEqual([]);
  rmSync(stick, { recursive: true });
  renameSync(`${stick}-out`, stick);
  await next.look();
  expect(next.troubles).toEqual([]);
  expect(backupsIn(stick)).toHaveLength(1);
  await store.close();
});

test('fourteen days without a backup there are told, over restarts, whatever the reason', async () => {
  const { stick, elsewhere, open, later, make, store } = await shopWithStick();
  await elsewhere.name(stick);
  later(13 * DAY);
  expect(elsewhere.troubles).toEqual([]);
  later(DAY + 1000);
  expect((await open()).troubles).toEqual([{ code: 'backup-late', figures: { folder: stick, count: 14 } }]);
  later(-14 * DAY);
  await make();
  await elsewhere.look();
  later(15 * DAY);
  expect((await open()).troubles).toMatchObject([{ code: 'backup-late' }]);
  await store.close();
});

test('a disk that hangs holds up neither the start nor who asks, is told, and is not asked again until it answers', async () => {
  let hangs = false;
  let asked = 0;
  let answer: () => void = () => undefined;
  const there: FilePort = {
    ...disk,
    read: (path) => {
      asked += 1;
      return hangs ? new Promise((done) => (answer = () => done(disk.read(path)))) : disk.read(path);
    },
  };
  const { stick, elsewhere, open, make, store } = await shopWithStick(there, 50);
  await elsewhere.name(stick);
  hangs = true;
  const began = performance.now();
  const next = await open();
  await next.look();
  expect(performance.now() - began).toBeLessThan(1000);
  expect(next.troubles).toMatchObject([{ code: 'backup-gone' }]);
  const before = asked;
  for (let k = 0; k < 5; k += 1) await next.look();
  expect(await next.list()).toEqual([]);
  expect(asked).toBe(before);
  hangs = false;
  answer();
  await make();
  await new Promise((done) => setTimeout(done, 20));
  await next.look();
  expect([next.troubles, backupsIn(stick).length]).toEqual([[], 1]);
  await store.close();
});

test('a full stick keeps what it has and is told, and no half backup counts', async () => {
  let full = false;
  const there: FilePort = {
    ...disk,
    async create(path) {
      const file = await disk.create(path);
      return full ? { ...file, flush: () => Promise.reject(new Error('ENOSPC: no space left')) } : file;
    },
  };
  const { stick, elsewhere, make, store } = await shopWithStick(there);
  await elsewhere.name(stick);
  await make();
  await elsewhere.look();
  full = true;
  await make();
  await elsewhere.look();
  expect(elsewhere.troubles).toMatchObject([
    { code: 'backup-gone', figures: { reason: 'ENOSPC: no space left' } },
  ]);
  expect(backupsIn(stick)).toHaveLength(1);
  full = false;
  await elsewhere.look();
  expect([elsewhere.troubles, backupsIn(stick).length]).toEqual([[], 2]);
  await store.close();
});

test('a folder that is none, lies in the data or is no whole path is not taken', async () => {
  const { data, stick, elsewhere, store } = await shopWithStick();
  writeFileSync(join(stick, 'file'), '');
  expect(await elsewhere.name('sticks/here')).toBe('not-absolute');
  expect(await elsewhere.name(join(data, 'backups'))).toBe('own-folder');
  expect(await elsewhere.name(data)).toBe('own-folder');
  expect(await elsewhere.name(join(stick, 'none'))).toBe('not-there');
  expect(await elsewhere.name(join(stick, 'file'))).toBe('not-there');
  expect(elsewhere.state.folder).toBeNull();
  await store.close();
});

test('a new machine takes the shop from the stick, with its marks, and everybody hears of a stick that is gone', async () => {
  const { stick, elsewhere, make, store } = await shopWithStick();
  await store.mark(milled(partsOf(store)[0]?.code ?? ''));
  await make();
  await elsewhere.name(stick);
  const board = store.board();
  await store.close();
  const live = await liveHub();
  const named = await live.ask('PUT', '/backups/elsewhere', { folder: stick });
  const [there] = named.body.backups as { name: string }[];
  expect(named.body).toMatchObject({ folder: stick, trouble: null });
  const put = await live.ask('POST', `/backups/elsewhere/${String(there?.name)}/restore`, {});
  expect(put.body).toMatchObject({ jobs: 1 });
  expect((await live.ask('GET', `/jobs/${SMALL_JOB.id}`)).status).toBe(200);
  expect((await live.ask('GET', '/board')).body).toEqual({ doors: board });
  for (const name of ['..%2f..%2fetc%2fpasswd', SIGN_NAME, 'none'])
    expect((await live.ask('POST', `/backups/elsewhere/${name}/restore`, {})).status).toBe(404);
  renameSync(stick, `${stick}-out`);
  await live.restart();
  await expect
    .poll(async () => (await live.ask('GET', '/health')).body)
    .toMatchObject({ ok: false, troubles: [{ code: 'backup-gone' }] });
  expect(existsSync(stick)).toBe(false);
  expect((await live.ask('PUT', '/backups/elsewhere', { folder: null })).body).toMatchObject({
    folder: null,
  });
  expect((await live.ask('GET', '/health')).body).toMatchObject({ ok: true });
  rmSync(`${stick}-out`, { recursive: true });
});
