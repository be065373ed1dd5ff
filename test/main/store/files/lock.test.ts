import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  appendFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { disk } from '#main/store/files/disk.ts';
import { BEAT, type Beat } from '#main/store/files/judge-lock.ts';
import { type Locking, type Taken, takeLock } from '#main/store/files/lock.ts';
import { type ProcessTable, startedBy, systemProcesses } from '#main/store/files/process-table.ts';
import { freshFolder } from '../fresh-folder.ts';

/** A machine on which these processes live: number and start time. */
const machine = (
  boot: string,
  living: Readonly<Record<number, string>>,
  space = 'pid:[1]',
): ProcessTable => ({ boot, space, started: (pid) => living[pid] ?? null });

/** As usual, fifty times as fast. */
const QUICK: Beat = { everyMs: 40, lookMs: 10, stillMs: 200 };

/** Tries to take a folder; what was taken is given back when the test has finished. */
async function tryLock(folder: string, pid: number, table: ProcessTable): Promise<Locking> {
  const lock = await takeLock(disk, folder, pid, table, QUICK);
  if (lock.ok) onTestFinished(() => lock.release());
  return lock;
}

async function taken(folder: string, pid: number, table: ProcessTable): Promise<Taken> {
  const lock = await tryLock(folder, pid, table);
  if (!lock.ok) throw new Error(`refused: ${lock.holder.pid} has it`);
  return lock;
}

const visible = (folder: string) => readdirSync(folder).filter((name) => !name.startsWith('.'));

test('a second process is refused and told who holds the folder', async () => {
  const folder = freshFolder();
  const table = machine('boot-a', { 10: '100', 11: '110' });
  await taken(folder, 10, table);
  expect(await tryLock(folder, 11, table)).toMatchObject({
    ok: false,
    holder: { pid: 10, started: '100', boot: 'boot-a', space: 'pid:[1]' },
  });
  expect(readdirSync(folder)).toHaveLength(2);
});

test.each([
  ['its process is gone', machine('boot-a', { 11: '110' }), true],
  ['its number was given to another process since', machine('boot-a', { 10: '999', 11: '110' }), true],
  ['it is of another boot and its heart stands still', machine('boot-b', { 10: '100', 11: '110' }), false],
  [
    'it is of another namespace and its heart stands still',
    machine('boot-a', { 10: '100', 11: '110' }, 'pid:[2]'),
    false,
  ],
])('a lock is taken over when %s', async (_why, later, certain) => {
  const folder = freshFolder();
  await taken(folder, 10, machine('boot-a', { 10: '100' }));
  const began = performance.now();
  const second = await tryLock(folder, 11, later);
  expect(second).toMatchObject({
    ok: true,
    certain,
    takenOver: { pid: 10, started: '100', boot: 'boot-a' },
  });
  expect(performance.now() - began >= QUICK.stillMs).toBe(!certain);
  expect(JSON.parse(readFileSync(join(folder, 'lock-2.json'), 'utf8'))).toMatchObject({ pid: 11 });
  expect(visible(folder)).toEqual(['lock-2.json']);
  expect(readdirSync(folder)).toHaveLength(2);
});

test.each([
  ['another boot', machine('boot-b', {})],
  ['another namespace', machine('boot-a', {}, 'pid:[2]')],
  ['a table that cannot tell', machine('unknown', {}, 'unknown')],
])('who looks from %s gives way to a heart that beats, whatever its clock says', async (_where, later) => {
  const folder = freshFolder();
  const first = await taken(folder, 10, machine('boot-a', { 10: '100' }));
  const heart = setInterval(() => void first.beat(), QUICK.everyMs);
  try {
    expect(await tryLock(folder, 11, later)).toMatchObject({ ok: false, holder: { pid: 10 } });
  } finally {
    clearInterval(heart);
  }
  expect(first.look()).toBe('held');
});

test('who was taken over sees it at once, and no draft of it gets its name any more', async () => {
  const folder = freshFolder();
  const first = await taken(folder, 10, machine('boot-a', { 10: '100' }));
  writeFileSync(join(first.room, 'shop.json.new'), 'late');
  const second = await taken(folder, 11, machine('boot-b', { 11: '110' }));
  expect([first.look(), second.look()]).toEqual(['lost', 'held']);
  expect(await first.successor()).toMatchObject({ pid: 11, boot: 'boot-b' });
  expect(existsSync(first.room)).toBe(false);
  expect(() => renameSync(join(first.room, 'shop.json.new'), join(folder, 'shop.json'))).toThrow('ENOENT');
  // Neither a late beat nor its end brings the lock back or takes the other's away.
  await first.beat();
  await first.release();
  expect(visible(folder)).toEqual(['lock-2.json']);
  expect(second.look()).toBe('held');
});

test('a lock removed by hand is lost for good, and whoever comes then knows that one may still write', async () => {
  const folder = freshFolder();
  const table = machine('boot-a', { 10: '100', 11: '110' });
  const first = await taken(folder, 10, table);
  const path = join(folder, 'lock-1.json');
  const lock = readFileSync(path);
  rmSync(path);
  expect(first.look()).toBe('lost');
  expect(await first.successor()).toBeNull();
  const second = await taken(folder, 11, table);
  expect(second).toMatchObject({ certain: false });
  expect(second.look()).toBe('held');
  writeFileSync(path, lock);
  expect([first.look(), second.look()]).toEqual(['lost', 'lost']);
});

test('a folder that is away is not lost, and held again when it is back', async () => {
  const folder = freshFolder();
  const first = await taken(folder, 10, machine('boot-a', { 10: '100' }));
  renameSync(folder, `${folder}-away`);
  expect(first.look()).toBe('away');
  renameSync(`${folder}-away`, folder);
  expect(first.look()).toBe('held');
});

test('beats do not make a lock grow for ever, and it reads as before', async () => {
  const folder = freshFolder();
  const first = await taken(folder, 10, machine('boot-a', { 10: '100' }));
  const path = join(folder, 'lock-1.json');
  let before = readFileSync(path);
  for (let k = 0; k < 4100; k += 1) {
    await first.beat();
    const now = readFileSync(path);
    if (now.equals(before)) throw new Error(`beat ${k} cannot be told`);
    before = now;
  }
  expect(before.length).toBeLessThan(3000);
  expect(JSON.parse(before.toString('utf8'))).toMatchObject({ pid: 10 });
  expect(first.look()).toBe('held');
});

test('of many that try at once over a dead lock, one gets the folder', async () => {
  const folder = freshFolder();
  await taken(folder, 10, machine('boot-a', { 10: '100' }));
  const living = Object.fromEntries(Array.from({ length: 20 }, (_, k) => [100 + k, `${k}`]));
  const table = machine('boot-a', living);
  for (let round = 0; round < 20; round += 1) {
    const tried = await Promise.all(Object.keys(living).map((pid) => tryLock(folder, Number(pid), table)));
    const all = tried.filter((each) => each.ok);
    expect(all).toHaveLength(1);
    expect(all[0]?.look()).toBe('held');
    await Promise.all(all.map((each) => each.release()));
    writeFileSync(join(folder, 'lock-7.json'), JSON.stringify({ pid: 10, started: '100', boot: 'boot-a' }));
  }
});

test('an unreadable lock is taken over, and a released one is gone', async () => {
  const folder = freshFolder();
  writeFileSync(join(folder, 'lock-1.json'), '{"pid":');
  const table = machine('boot-a', { 10: '100', 11: '110' });
  const first = await taken(folder, 10, table);
  expect(first).toMatchObject({ certain: false, takenOver: { started: 'unreadable' } });
  await first.release();
  expect(readdirSync(folder)).toEqual([]);
  const second = await taken(folder, 11, table);
  expect(second.certain).toBe(true);
  expect('takenOver' in second).toBe(false);
});

test('a lock with a number of ten digits counts like any other', async () => {
  const folder = freshFolder();
  const table = machine('boot-a', { 10: '100', 11: '110' });
  writeFileSync(
    join(folder, 'lock-9999999999.json'),
    JSON.stringify({ pid: 10, started: '100', boot: 'boot-a' }),
  );
  expect(await tryLock(folder, 11, table)).toMatchObject({ ok: false, holder: { pid: 10 } });
  const later = await taken(folder, 11, machine('boot-a', { 11: '110' }));
  expect(visible(folder)).toEqual(['lock-10000000000.json']);
  expect(later.look()).toBe('held');
});

test('where start times cannot be told, a restarted process with the same number takes over, a running one does not', async () => {
  const folder = freshFolder();
  const table = machine('unknown', { 10: 'unknown' }, 'unknown');
  writeFileSync(
    join(folder, 'lock-1.json'),
    JSON.stringify({ pid: 10, started: 'unknown', boot: 'unknown' }),
  );
  await taken(folder, 10, table);
  expect(await tryLock(folder, 10, table)).toMatchObject({ ok: false });
});

test('this system tells a living process from one that is gone, and from one that only waits to be reaped', async () => {
  expect(systemProcesses.started(process.pid)).toMatch(/^\d+$|^unknown$/);
  expect(systemProcesses.started(4_194_305)).toBeNull();
  // A shell that becomes something else reaps no child of before.
  const parent = spawn('sh', ['-c', 'sleep 0.05 & echo $!; exec sleep 20'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  onTestFinished(() => void parent.kill('SIGKILL'));
  const [told] = (await once(parent.stdout, 'data')) as [Buffer];
  const child = Number(told.toString().trim());
  const state = () => /\) (\w)/.exec(readFileSync(`/proc/${child}/stat`, 'utf8'))?.[1];
  for (let k = 0; state() !== 'Z' && k < 200; k += 1) await pause(10);
  expect(state()).toBe('Z');
  expect(systemProcesses.started(child)).toBeNull();
});

test('a process whose first thread is over while others run is not over', () => {
  const stat = (state: string, threads: number) =>
    `7 (no) de) ${state} 1 7 7 0 -1 4194560 1 2 3 4 5 6 7 8 20 0 ${threads} 0 4711 0 0`;
  expect(startedBy(stat('R', 11))).toBe('4711');
  expect(startedBy(stat('Z', 1))).toBeNull();
  expect(startedBy(stat('X', 0))).toBeNull();
  expect(startedBy(stat('Z', 3))).toBe('4711');
});

/** A lock as one of another boot left it, last written so many seconds before now. */
function leftBehind(folder: string, seconds: number, boot = 'boot-a'): string {
  const path = join(folder, 'lock-1.json');
  writeFileSync(
    path,
    JSON.stringify({ pid: 10, started: '100', boot, space: 'pid:[1]', token: 'x', host: 'h' }),
  );
  const at = Date.now() / 1000 - seconds;
  utimesSync(path, at, at);
  return path;
}

const timed = async (folder: string, table: ProcessTable, beat: Beat) => {
  const began = performance.now();
  const lock = await takeLock(disk, folder, 11, table, beat);
  if (lock.ok) onTestFinished(() => lock.release());
  return { ok: lock.ok, ms: performance.now() - began };
};

test('after a power cut nobody waits: a lock of another boot last written long ago is taken over at once', async () => {
  const folder = freshFolder();
  leftBehind(folder, 60);
  const { ok, ms } = await timed(folder, machine('boot-b', { 11: '110' }), BEAT);
  expect(ok).toBe(true);
  expect(ms).toBeLessThan(1000);
});

test.each([
  ['was written a moment ago', 0, 'boot-b'],
  ['was written so long ago that two times of a disk of FAT may be one', 1.5, 'boot-b'],
  ['was written after the clock was set back', -3600, 'boot-b'],
  ['is of this boot and another namespace, where a machine may have slept', 60, 'boot-a'],
])('a lock that %s is watched for as long as ever', async (_why, seconds, boot) => {
  const folder = freshFolder();
  leftBehind(folder, seconds);
  const table = machine(boot, { 11: '110' }, 'pid:[2]');
  const { ok, ms } = await timed(folder, table, { ...QUICK, stillMs: 400 });
  expect(ok).toBe(true);
  expect(ms).toBeGreaterThanOrEqual(390);
});

test('a holder of another boot whose heart beats keeps its folder, however long its machine has been on', async () => {
  const folder = freshFolder();
  const path = leftBehind(folder, 0);
  const heart = setInterval(() => appendFileSync(path, ' '), QUICK.everyMs);
  onTestFinished(() => clearInterval(heart));
  for (let k = 0; k < 5; k += 1) {
    expect((await timed(folder, machine('boot-b', { 11: '110' }), QUICK)).ok).toBe(false);
    await pause(QUICK.stillMs);
  }
});
