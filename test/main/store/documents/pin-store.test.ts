import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { disk } from '#main/store/files/disk.ts';
import { PinStore, waitAfter } from '#main/store/documents/pin-store.ts';
import { freshFolder } from '../fresh-folder.ts';
import { tryingPort } from '../trying-port.ts';

const at = (folder: string) => join(folder, 'pin.json');

test('a PIN is kept as a salted hash alone, and two shops with the same PIN keep different ones', async () => {
  const kept = await Promise.all(
    [freshFolder(), freshFolder()].map(async (folder) => {
      await (await PinStore.open(disk, at(folder))).change('2468');
      return readFileSync(at(folder), 'utf8');
    }),
  );
  for (const text of kept) expect(text).not.toContain('2468');
  expect(kept[0]).not.toBe(kept[1]);
});

test('after three wrong tries each must wait longer, and a restart does not help', async () => {
  const folder = freshFolder();
  let now = 1_000_000;
  let pin = await PinStore.open(disk, at(folder), () => now);
  await pin.change('2468');
  for (let k = 0; k < 3; k += 1) expect(await pin.try('1111')).toEqual({ kind: 'wrong' });
  expect(await pin.try('2468')).toEqual({ kind: 'wait', seconds: 2 });
  pin = await PinStore.open(disk, at(folder), () => now);
  expect(await pin.try('2468')).toEqual({ kind: 'wait', seconds: 2 });
  now += 2000;
  expect(await pin.try('1111')).toEqual({ kind: 'wrong' });
  expect(await pin.try('2468')).toEqual({ kind: 'wait', seconds: 4 });
  now += 4000;
  expect(await pin.try('2468')).toEqual({ kind: 'right' });
  expect(await pin.try('1111')).toEqual({ kind: 'wrong' });
});

test('the wait doubles with each wrong try from the third on, up to a quarter of an hour', () => {
  expect(Array.from({ length: 15 }, (_, wrong) => waitAfter(wrong) / 1000)).toEqual([
    0, 0, 0, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900, 900,
  ]);
});

test('a clock set back makes nobody wait longer than asked', async () => {
  const folder = freshFolder();
  let now = 1_000_000_000;
  const pin = await PinStore.open(disk, at(folder), () => now);
  await pin.change('2468');
  for (let k = 0; k < 3; k += 1) await pin.try('1111');
  now = 0;
  expect(await pin.try('2468')).toEqual({ kind: 'wait', seconds: 2 });
});

test('a try counts before it is looked at: with a full disk none is looked at', async () => {
  const folder = freshFolder();
  const port = tryingPort();
  const pin = await PinStore.open(port, at(folder));
  await pin.change('2468');
  port.break('write', 'ENOSPC');
  await expect(pin.try('2468')).rejects.toThrow('ENOSPC');
});

test('with no PIN everybody may', async () => {
  const pin = await PinStore.open(disk, at(freshFolder()));
  expect([pin.set, pin.unreadable, pin.gone]).toEqual([false, null, false]);
  expect(await pin.try('')).toEqual({ kind: 'right' });
});

test.each([
  ['empty', () => ''],
  ['cut', (text: string) => text.slice(0, -30)],
  ['changed in one letter of its hash', (text: string) => text.replace(/"hash": "./, '"hash": "!')],
])('a PIN’s file that is %s stays where it is and is no way in', async (_what, damage) => {
  const folder = freshFolder();
  await (await PinStore.open(disk, at(folder))).change('2468');
  const damaged = damage(readFileSync(at(folder), 'utf8'));
  writeFileSync(at(folder), damaged);
  const pin = await PinStore.open(disk, at(folder), Date.now, true);
  expect(pin.set).toBe(true);
  expect(pin.unreadable).not.toBeNull();
  for (const tried of ['2468', '']) expect(await pin.try(tried)).toEqual({ kind: 'unreadable' });
  expect(readFileSync(at(folder), 'utf8')).toBe(damaged);
});

test('a PIN’s file that was removed is told from one that never was', async () => {
  const folder = freshFolder();
  expect((await PinStore.open(disk, at(folder), Date.now, true)).gone).toBe(true);
  expect((await PinStore.open(disk, at(folder), Date.now, false)).gone).toBe(false);
});

test('a browser that gave the right PIN before is not held up by others’ wrong tries, and others are held up together', async () => {
  const folder = freshFolder();
  let now = 1_000_000;
  let pin = await PinStore.open(disk, at(folder), () => now);
  await pin.change('2468', 'office');
  // Each try from a browser of its own: three free ones each would be endless ones.
  let waited = 0;
  for (let k = 0; k < 40; k += 1) if ((await pin.try('1111', `stranger-${k}`)).kind === 'wait') waited += 1;
  expect(waited).toBe(28);
  expect(await pin.try('2468', 'new')).toMatchObject({ kind: 'wait' });
  pin = await PinStore.open(disk, at(folder), () => now);
  expect(await pin.try('2468', 'office')).toEqual({ kind: 'right' });
  // That it was right there gives the others no new tries.
  expect(await pin.try('1111', 'stranger-99')).toMatchObject({ kind: 'wait' });
  for (let k = 0; k < 3; k += 1) expect(await pin.try('1111', 'office')).toEqual({ kind: 'wrong' });
  expect(await pin.try('2468', 'office')).toEqual({ kind: 'wait', seconds: 2 });
  now += 2000;
  expect(await pin.try('2468', 'office')).toEqual({ kind: 'right' });
});

test('a browser’s wrong tries are its own: another one beside it has its three', async () => {
  const pin = await PinStore.open(disk, at(freshFolder()), () => 1_000_000);
  await pin.change('2468');
  for (let k = 0; k < 3; k += 1) await pin.try('1111', 'bench');
  expect(await pin.try('2468', 'bench')).toMatchObject({ kind: 'wait' });
  expect(await pin.try('2468', 'board')).toEqual({ kind: 'right' });
});

test('a PIN of the first form is taken up with its wrong tries', async () => {
  const folder = freshFolder();
  const now = () => 1_000_000;
  await (await PinStore.open(disk, at(folder), now)).change('2468');
  const {
    browsers: _browsers,
    sum: _sum,
    ...first
  } = JSON.parse(readFileSync(at(folder), 'utf8')) as Record<string, unknown>;
  writeFileSync(at(folder), JSON.stringify({ ...first, format: 1, wrong: 12, last: now() }));
  const pin = await PinStore.open(disk, at(folder), now);
  expect(await pin.try('2468')).toEqual({ kind: 'wait', seconds: 2 });
});

test('one that cannot pass for another waits for its own wrong tries, and nobody else waits for them', async () => {
  const pin = await PinStore.open(disk, at(freshFolder()), () => 1_000_000);
  await pin.change('2468');
  for (let k = 0; k < 12; k += 1) await pin.try('1111', `tablet ${k % 4}`, true);
  expect(await pin.try('2468', 'tablet 0', true)).toEqual({ kind: 'wait', seconds: 2 });
  expect(await pin.try('2468', 'a new browser')).toEqual({ kind: 'right' });
  for (let k = 0; k < 12; k += 1) await pin.try('1111', `browser ${k}`);
  expect(await pin.try('2468', 'one more browser')).toEqual({ kind: 'wait', seconds: 2 });
  expect(await pin.try('2468', 'another tablet', true)).toEqual({ kind: 'right' });
});
