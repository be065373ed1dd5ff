import { readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32, gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { archiveLines } from '#main/store/archive/archive-lines.ts';
import { backupDue } from '#main/store/archive/backup-clock.ts';
import { Backups } from '#main/store/archive/backups.ts';
import { disk } from '#main/store/files/disk.ts';
import { type FilePort, StoreTrouble } from '#main/store/files/file-port.ts';
import { ArchiveFault } from '#main/store/archive/read-archive.ts';
import { restoringInto } from '#main/store/archive/restore.ts';
import type { Store } from '#main/store/store.ts';
import { freshFolder } from '../fresh-folder.ts';
import { milled, openStore, partsOf, smallShop } from '../small-shop.ts';
import { tryingPort } from '../trying-port.ts';

async function exported(store: Store): Promise<Buffer> {
  const pieces: string[] = [];
  for await (const line of archiveLines(store, 'test')) pieces.push(line);
  return Buffer.from(pieces.join(''));
}

async function* inPieces(bytes: Buffer, size = 1000): AsyncGenerator<Buffer> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

/** A store with three marks, what puts archives into it, and its backups. */
async function shopWithBackups(folder: string, port: FilePort = disk) {
  const store = await smallShop(folder, port);
  const codes = partsOf(store).map(({ code }) => code);
  for (const code of codes.slice(0, 3)) await store.mark(milled(code));
  const backups = new Backups(port, folder);
  return { store, codes, backups, restore: restoringInto(port, folder, store, backups, 'test') };
}

const stateOf = (store: Store) => ({
  jobs: store.jobs.all().map(({ document }) => document),
  progress: store.progress('boot-room'),
});

test('a backup made while marks come in is one moment, is read back, and puts that moment back', async () => {
  const folder = freshFolder();
  const { store, codes, backups, restore } = await shopWithBackups(folder);
  const making = backups.make(store, 'test', 5);
  const then = stateOf(store);
  const later = store.mark(milled(codes[5] ?? ''));
  const backup = await making;
  await later;
  expect(backup).toMatchObject({ jobs: 1, entries: 4 });
  await store.jobs.update('boot-room', 1, { ...then.jobs[0]?.file, job: 'Changed since' });
  const bytes = await backups.open(backup.name);
  if (bytes === null) throw new Error('no backup');
  const restored = await restore(backup.name, bytes, 'own');
  expect(stateOf(store)).toEqual(then);
  expect((await backups.list()).map(({ name }) => name)).toContain(restored.before);
  await store.close();
  const again = await openStore(folder);
  expect(stateOf(again)).toEqual(then);
  expect(await again.mark(milled(codes[5] ?? ''))).toMatchObject({ ok: true });
  await again.close();
});

test('numbers go on from where they were when data are put back', async () => {
  const { store, codes, backups, restore } = await shopWithBackups(freshFolder());
  const backup = await backups.make(store, 'test', 5);
  await store.mark(milled(codes[4] ?? ''));
  const reached = store.lastSeq;
  const bytes = await backups.open(backup.name);
  if (bytes === null) throw new Error('no backup');
  await restore(backup.name, bytes, 'own');
  expect(store.lastSeq).toBe(reached + 1);
  const told = await store.mark(milled(codes[4] ?? ''));
  expect(told.ok && told.accepted.seq).toBe(reached + 2);
  await store.close();
});

/** A store whose log is many pieces long. */
async function longShop(folder: string) {
  const shop = await shopWithBackups(folder);
  const small = await shop.backups.make(shop.store, 'test', 9);
  const marks = Array.from({ length: 1500 }, (_, k) =>
    milled(shop.codes[k % shop.codes.length] ?? '', { mark: 'proved', reason: 'as the test piece' }),
  );
  await Promise.all(marks.map((mark) => shop.store.mark(mark)));
  const restoreSmall = async () => {
    const bytes = await shop.backups.open(small.name);
    if (bytes === null) throw new Error('no backup');
    return shop.restore(small.name, bytes, 'own');
  };
  return { ...shop, small, restoreSmall };
}

test('an export that is being read while other data are put in place ends in an error, never as a short archive', async () => {
  const { store, restoreSmall } = await longShop(freshFolder());
  const reading = archiveLines(store, 'test');
  const begun: string[] = [];
  for (let k = 0; k < 10; k += 1) begun.push((await reading.next()).value as string);
  await restoreSmall();
  await expect(
    (async () => {
      for await (const line of reading) begun.push(line);
    })(),
  ).rejects.toThrow(/other data were put in place/);
  expect(begun.join('')).not.toContain('"end"');
  await store.close();
});

test('a backup asked for at any moment of a restore holds the one or the other data, whole', async () => {
  for (const turns of [0, 1, 5, 20, 60, 150, 300]) {
    const { store, codes, backups, small, restoreSmall } = await longShop(freshFolder());
    const restoring = restoreSmall();
    for (let k = 0; k < turns; k += 1) await new Promise((turn) => setImmediate(turn));
    const backup = await backups.make(store, 'test', 9);
    const { before } = await restoring;
    expect([1 + 3 + 1500, small.entries + 1], `after ${turns} turns`).toContain(backup.entries);
    expect((await backups.list()).map(({ name }) => name)).toEqual(
      expect.arrayContaining([before, backup.name]),
    );
    expect(await store.mark(milled(codes[7] ?? ''))).toMatchObject({ ok: true });
    await store.close();
  }
}, 30_000);

test('a log that is cut short under its readers is told, and no archive is made of it', async () => {
  const folder = freshFolder();
  const { store, backups } = await longShop(folder);
  truncateSync(join(folder, 'log.jsonl'), 40_000);
  await expect(exported(store)).rejects.toThrow(StoreTrouble);
  await expect(backups.make(store, 'test', 9)).rejects.toThrow(/no longer reads as it was answered/);
  expect(await backups.list()).toHaveLength(1);
  await store.close();
});

test.each([1, 2])(
  'an archive of format %i whose log ends before its head says so is refused, its sums right',
  async (format) => {
    const { store, restore } = await shopWithBackups(freshFolder());
    const lines = (await exported(store)).toString('utf8').split('\n');
    lines[1] = (lines[1] ?? '').replace('"archive":2', `"archive":${format}`);
    const end = lines.findIndex((line) => line.startsWith('{"end"'));
    const short = lines.slice(0, end - 1);
    const sum = crc32(`${short.join('\n')}\n`);
    const cut = `${short.join('\n')}\n{"end":{"jobs":1,"entries":3,"last":3,"sum":${sum}}}\n]\n`;
    await expect(restore('cut', inPieces(Buffer.from(cut)), 'own')).rejects.toThrow(
      /cut short: it is to hold entries up to 4; it ends at 3/,
    );
    await store.close();
  },
);

test('an archive whose end names another last entry is refused', async () => {
  const { store, restore } = await shopWithBackups(freshFolder());
  const text = (await exported(store))
    .toString('utf8')
    .replace('"entries":4,"last":4', '"entries":4,"last":5');
  await expect(restore('other', inPieces(Buffer.from(text)), 'foreign')).rejects.toThrow(
    /another last entry/,
  );
  await store.close();
});

test('a damaged last line of the log costs its entry and neither backup nor restore', async () => {
  const folder = freshFolder();
  await (await shopWithBackups(folder)).store.close();
  const path = join(folder, 'log.jsonl');
  writeFileSync(path, readFileSync(path, 'utf8').replace(/"stage":"mill"(?=[^\n]*\n$)/, '"stage":"nill"'));
  const store = await openStore(folder);
  expect(store.found.scanned.damaged).toHaveLength(1);
  const backups = new Backups(disk, folder);
  const backup = await backups.make(store, 'test', 9);
  expect(backup.entries).toBe(3);
  const bytes = await backups.open(backup.name);
  if (bytes === null) throw new Error('no backup');
  expect(await restoringInto(disk, folder, store, backups, 'test')(backup.name, bytes, 'own')).toMatchObject({
    entries: 3,
  });
  await store.close();
});

test('the newest backups are kept, the oldest given up, and other files in their folder left alone', async () => {
  const folder = freshFolder();
  const { store, backups } = await shopWithBackups(folder);
  const made = [];
  for (let k = 0; k < 4; k += 1) made.push((await backups.make(store, 'test', 3)).name);
  writeFileSync(join(folder, 'backups', 'notes.txt'), 'mine');
  made.push((await backups.make(store, 'test', 3)).name);
  expect((await backups.list()).map(({ name }) => name)).toEqual(made.slice(2).reverse());
  expect(readdirSync(join(folder, 'backups'))).toContain('notes.txt');
  expect(await backups.open('../pin.json')).toBeNull();
  await store.close();
});

test.each(['write', 'flush', 'rename'] as const)(
  'a backup whose %s fails costs no older one and is never listed',
  async (step) => {
    const port = tryingPort();
    const { store, backups } = await shopWithBackups(freshFolder(), port);
    const first = await backups.make(store, 'test', 1);
    port.break(step, 'ENOSPC', /draft|gz/);
    await expect(backups.make(store, 'test', 1)).rejects.toThrow('ENOSPC');
    expect((await backups.list()).map(({ name }) => name)).toEqual([first.name]);
    port.mend();
    await store.close();
  },
);

test('no PIN, session or lock is in an archive', async () => {
  const folder = freshFolder();
  const { store, backups } = await shopWithBackups(folder);
  writeFileSync(join(folder, 'pin.json'), '{"format":1,"pin":{"salt":"SALTED","hash":"HASHED"}}');
  const { name } = await backups.make(store, 'test', 1);
  const text = gunzipSync(readFileSync(join(folder, 'backups', name))).toString('utf8');
  expect(text).not.toMatch(/SALTED|HASHED|"boot":|"pid":/);
  expect((JSON.parse(text) as unknown[]).length).toBe(1 + 1 + 1 + 4 + 1);
  await store.close();
});

test('an archive damaged anywhere is refused, and the data stay as they were', async () => {
  const folder = freshFolder();
  const { store, restore } = await shopWithBackups(folder);
  const whole = await exported(store);
  const before = stateOf(store);
  await fc.assert(
    fc.asyncProperty(fc.nat(whole.length - 2), fc.integer({ min: 1, max: 127 }), async (at, flip) => {
      const damaged = Buffer.from(whole);
      damaged[at] = (damaged[at] ?? 0) ^ flip;
      await expect(restore('damaged', inPieces(damaged), 'foreign')).rejects.toThrow(ArchiveFault);
      expect(stateOf(store)).toEqual(before);
    }),
    { numRuns: 25 },
  );
  for (const part of [0, 1, 2, 10, whole.length >> 1, whole.length - 2])
    await expect(restore('cut', inPieces(whole.subarray(0, part)), 'foreign')).rejects.toThrow(ArchiveFault);
  await store.close();
}, 30_000);

test.each([
  ['no list', '{}', /no archive/],
  ['nested without end', `[\n${'['.repeat(100_000)}`, /nested deeper/],
  [
    'a newer form',
    '[\n{"archive":99,"version":"9","made":"2026-11-25T08:00:00Z","seq":0},\n',
    /newer version/,
  ],
  [
    'a path for a file',
    '[\n{"archive":1,"version":"9","made":"2026-11-25T08:00:00Z","seq":0},\n{"file":"../../x"},\n',
    /line 3/,
  ],
  ['a line without end', `[\n"${'x'.repeat(17 * 1024 * 1024)}`, /a line of more than/],
])('%s is no archive', async (_what, text, words) => {
  const folder = freshFolder();
  const { store, restore } = await shopWithBackups(folder);
  await expect(restore('other', inPieces(Buffer.from(text), 65_536), 'foreign')).rejects.toThrow(words);
  expect(await store.mark(milled(partsOf(store)[6]?.code ?? ''))).toMatchObject({ ok: true });
  await store.close();
});

test('the plug pulled at any step of putting data back leaves the one or the other whole', async () => {
  let reached = 0;
  for (let stopAt = 0; stopAt <= reached; stopAt += 1) {
    const folder = freshFolder();
    const port = tryingPort();
    const { store, codes, restore } = await shopWithBackups(folder, port);
    const then = stateOf(store);
    const archive = await exported(store);
    await store.mark(milled(codes[4] ?? ''));
    const now = stateOf(store);
    let steps = 0;
    port.before = (step) => {
      if (/gz|draft|^folder backups/.test(step)) return;
      steps += 1;
      if (steps > stopAt) throw new Error('the plug is pulled');
    };
    const outcome = await restore('archive', inPieces(archive), 'foreign').then(
      () => 'restored',
      () => 'stopped',
    );
    if (outcome === 'stopped') reached = stopAt + 1;
    port.before = () => undefined;
    await store.close();
    const again = await openStore(folder);
    const found = stateOf(again);
    expect([now.progress.parts, then.progress.parts], `step ${stopAt}`).toContainEqual(found.progress.parts);
    expect(found.jobs).toEqual(then.jobs);
    await again.close();
  }
  expect(reached).toBeGreaterThan(10);
}, 30_000);

test('a backup is due when there is none, when the newest is old, and when the clock was set back behind it', () => {
  const now = Date.parse('2026-11-25T12:00:00Z');
  expect(backupDue(undefined, 8, now)).toBe(true);
  expect(backupDue('2026-11-25T03:59:00Z', 8, now)).toBe(true);
  expect(backupDue('2026-11-25T04:01:00Z', 8, now)).toBe(false);
  expect(backupDue('2027-01-01T00:00:00Z', 8, now)).toBe(true);
});
