import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { disk } from '#main/store/files/disk.ts';
import { type ProcessTable, systemProcesses, takeLock } from '#main/store/files/lock.ts';
import { freshFolder } from '../fresh-folder.ts';

/** A machine on which these processes live: number and start time. */
const machine = (boot: string, living: Readonly<Record<number, string>>): ProcessTable => ({
  boot,
  started: (pid) => living[pid] ?? null,
});

test('a second process is refused and told who holds the folder', async () => {
  const folder = freshFolder();
  const table = machine('boot-a', { 10: '100', 11: '110' });
  const first = await takeLock(disk, folder, 10, table);
  expect(first.ok).toBe(true);
  expect(await takeLock(disk, folder, 11, table)).toEqual({
    ok: false,
    holder: { pid: 10, started: '100', boot: 'boot-a' },
  });
});

test.each([
  ['its process is gone', machine('boot-a', { 11: '110' })],
  ['its number was given to another process since', machine('boot-a', { 10: '999', 11: '110' })],
  ['it is of another boot, whatever runs under its number now', machine('boot-b', { 10: '100', 11: '110' })],
])('a lock is taken over when %s', async (_why, later) => {
  const folder = freshFolder();
  await takeLock(disk, folder, 10, machine('boot-a', { 10: '100' }));
  const second = await takeLock(disk, folder, 11, later);
  expect(second).toMatchObject({ ok: true, takenOver: { pid: 10, started: '100', boot: 'boot-a' } });
  expect(JSON.parse(readFileSync(join(folder, 'lock-2.json'), 'utf8'))).toMatchObject({ pid: 11 });
  expect(readdirSync(folder)).toEqual(['lock-2.json']);
});

test('of many that try at once over a dead lock, one gets the folder', async () => {
  const folder = freshFolder();
  await takeLock(disk, folder, 10, machine('boot-a', { 10: '100' }));
  const living = Object.fromEntries(Array.from({ length: 20 }, (_, k) => [100 + k, `${k}`]));
  const table = machine('boot-a', living);
  for (let round = 0; round < 20; round += 1) {
    const tried = await Promise.all(
      Object.keys(living).map((pid) => takeLock(disk, folder, Number(pid), table)),
    );
    const taken = tried.filter((each) => each.ok);
    expect(taken).toHaveLength(1);
    await Promise.all(taken.map((each) => each.release()));
    writeFileSync(join(folder, 'lock-7.json'), JSON.stringify({ pid: 10, started: '100', boot: 'boot-a' }));
  }
});

test('an unreadable lock is taken over, and a released one is gone', async () => {
  const folder = freshFolder();
  writeFileSync(join(folder, 'lock-1.json'), '{"pid":');
  const table = machine('boot-a', { 10: '100', 11: '110' });
  const first = await takeLock(disk, folder, 10, table);
  if (!first.ok) throw new Error('refused');
  expect(first.takenOver).toMatchObject({ started: 'unreadable' });
  await first.release();
  const second = await takeLock(disk, folder, 11, table);
  expect(second).toMatchObject({ ok: true });
  expect('takenOver' in second).toBe(false);
});

test('where start times cannot be told, a restarted process with the same number takes over, a running one does not', async () => {
  const folder = freshFolder();
  const table = machine('unknown', { 10: 'unknown' });
  writeFileSync(
    join(folder, 'lock-1.json'),
    JSON.stringify({ pid: 10, started: 'unknown', boot: 'unknown' }),
  );
  expect(await takeLock(disk, folder, 10, table)).toMatchObject({ ok: true });
  expect(await takeLock(disk, folder, 10, table)).toMatchObject({ ok: false });
});

test('this system tells a living process from one that is gone', () => {
  expect(systemProcesses.started(process.pid)).toMatch(/^\d+$|^unknown$/);
  expect(systemProcesses.started(4_194_305)).toBeNull();
});
