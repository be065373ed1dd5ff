import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { beforeAll, expect, test } from 'vitest';
import { freshData, removeData } from '../e2e/hub-process.ts';
import {
  blanksOf,
  buildFenceHub,
  Clients,
  Ledger,
  onlyOneAnswers,
  removeLocks,
  type Running,
  start,
} from './fence-rounds.ts';
import { seeded } from './seeded.ts';

const ROUNDS = Number(process.env.PROOF_ROUNDS ?? '200');
/** Longer than a heart of this proof may stand still. */
const LONGER_MS = 700;
/** The namespace ends with what started it. */
const OTHER_SPACE = ['unshare', '--pid', '--fork', '--mount-proc', '--kill-child=SIGKILL'];
const OTHER_BOOT = { PROOF_BOOT: '00000000-0000-4000-8000-000000000000' };

let entry = '';
beforeAll(async () => {
  entry = await buildFenceHub();
}, 120_000);

/**
 * So many folders at once, each with its share of the rounds: a round mostly waits for a heart that stands still. With more the
 * hubs of others would slow a heart down until it is taken for still.
 */
const LANES = Number(process.env.PROOF_LANES ?? '4');

/** Rounds on several folders at once; after the last one a fresh hub has every answered mark of all rounds of its folder. */
async function rounds(
  what: string,
  each: (data: string, ledger: Ledger, round: number, random: () => number) => Promise<void>,
): Promise<void> {
  const { seed, random } = seeded();
  const began = performance.now();
  const lane = async (first: number): Promise<number> => {
    const data = freshData();
    const ledger = new Ledger();
    try {
      for (let round = first; round < ROUNDS; round += LANES) await each(data, ledger, round, random);
      const last = await start(entry, data);
      await ledger.hold(last, ROUNDS);
      await ended(last);
    } finally {
      removeData(data);
    }
    return ledger.answered;
  };
  const lanes = await Promise.allSettled(Array.from({ length: Math.min(LANES, ROUNDS) }, (_, k) => lane(k)));
  const answered = lanes.map((each) => {
    if (each.status === 'rejected') throw each.reason;
    return each.value;
  });
  const marks = answered.reduce((sum, each) => sum + each, 0);
  const minutes = ((performance.now() - began) / 60_000).toFixed(1);
  console.log(
    `fence proof, ${what}: seed ${seed}, ${ROUNDS} rounds on ${answered.length} folders in ${minutes} minutes, ${marks} marks answered`,
  );
  expect(marks).toBeGreaterThan(ROUNDS);
}

async function ended(hub: Running): Promise<void> {
  hub.kill('SIGKILL');
  await hub.exited;
}

/** The first one is stopped in the middle of its work for longer than a heart may stand still, and wakes when the second answers. */
async function stoppedAndTakenOver(
  data: string,
  ledger: Ledger,
  round: number,
  random: () => number,
  second: () => Promise<Running>,
): Promise<void> {
  const first = await start(entry, data);
  expect(first.refused, `round ${round}`).toBeNull();
  const blanks = await blanksOf(first);
  const atFirst = new Clients(first.url, blanks);
  await atFirst.enough(1 + Math.floor(random() * 30));
  // A heart that beats holds the folder, wherever the other looks from.
  if (round % 10 === 0) expect((await second()).refused).toContain('in use');
  await pause(random() * 10);
  first.kill('SIGSTOP');
  const other = await second();
  const listened = performance.now();
  expect(other.refused, `round ${round}`).toBeNull();
  const atSecond = new Clients(other.url, blanks);
  await atSecond.enough(1 + Math.floor(random() * 20));
  first.kill('SIGCONT');
  await atSecond.enough(atSecond.answered.length + 10);
  expect(await first.exited).toBe(3);
  expect(first.said()).toContain('has taken the data folder over');
  await atFirst.end();
  await atSecond.end();
  onlyOneAnswers(atFirst, listened, round);
  ledger.take(atFirst);
  ledger.take(atSecond);
  await ledger.hold(other, round);
  await ended(other);
}

test('a hub in another pid namespace and one that was stopped: never two that answer, no answered mark lost', async () => {
  const there = spawnSync(OTHER_SPACE[0] ?? '', [...OTHER_SPACE.slice(1), 'true']);
  expect(there.status, 'unshare is not here or not allowed: other namespaces are not shown').toBe(0);
  await rounds('another namespace, stopped', (data, ledger, round, random) =>
    stoppedAndTakenOver(data, ledger, round, random, () => start(entry, data, OTHER_SPACE)),
  );
}, 7_200_000);

test('a hub of another boot and one that was stopped: never two that answer, no answered mark lost', async () => {
  await rounds('another boot, stopped', (data, ledger, round, random) =>
    stoppedAndTakenOver(data, ledger, round, random, () => start(entry, data, [], OTHER_BOOT)),
  );
}, 7_200_000);

test('a hub stopped for longer than a heart may stand still keeps its folder where it can be seen to live', async () => {
  await rounds('stopped, same namespace', async (data, ledger, round, random) => {
    const first = await start(entry, data);
    const blanks = await blanksOf(first);
    const clients = new Clients(first.url, blanks);
    await clients.enough(1 + Math.floor(random() * 30));
    first.kill('SIGSTOP');
    await pause(round % 10 === 0 ? LONGER_MS : 0);
    expect((await start(entry, data)).refused).toContain('in use');
    first.kill('SIGCONT');
    await clients.enough(clients.answered.length + 5);
    await clients.end();
    ledger.take(clients);
    await ledger.hold(first, round);
    await ended(first);
  });
}, 7_200_000);

test('the lock removed while a hub marks: it stops, the next one has every answered mark', async () => {
  await rounds('lock removed', async (data, ledger, round, random) => {
    const first = await start(entry, data);
    const blanks = await blanksOf(first);
    const atFirst = new Clients(first.url, blanks);
    await atFirst.enough(1 + Math.floor(random() * 30));
    const starting = start(entry, data);
    // The other finds it removed, or not yet: at a random moment of its start.
    await pause(random() * 400);
    removeLocks(data);
    let other = await starting;
    if (other.refused !== null) other = await start(entry, data);
    const listened = performance.now();
    expect(other.refused, `round ${round}`).toBeNull();
    const atSecond = new Clients(other.url, blanks);
    // Where it had begun already, its own lock was removed with the first one's.
    await Promise.race([atSecond.enough(5), other.exited]);
    expect(await first.exited).toBe(3);
    await atFirst.end();
    await atSecond.end();
    onlyOneAnswers(atFirst, listened, round);
    ledger.take(atFirst);
    ledger.take(atSecond);
    other.kill('SIGKILL');
    await other.exited;
    const third = await start(entry, data);
    await ledger.hold(third, round);
    await ended(third);
  });
}, 7_200_000);

test('a dead hub that nobody has reaped is known at once', async () => {
  await rounds('unreaped', async (data, ledger, round, random) => {
    // A shell that becomes something else reaps no child of before.
    const parent = await start(entry, data, ['sh', '-c', '"$@" & echo "PID $!"; exec sleep 600', 'sh']);
    const pid = Number(/PID (\d+)/.exec(parent.said())?.[1]);
    const blanks = await blanksOf(parent);
    const clients = new Clients(parent.url, blanks);
    await clients.enough(1 + Math.floor(random() * 30));
    await pause(random() * 10);
    process.kill(pid, 'SIGKILL');
    await clients.end();
    ledger.take(clients);
    for (let k = 0; stateOf(pid) !== 'Z' && k < 500; k += 1) await pause(2);
    expect(stateOf(pid)).toBe('Z');
    const next = await start(entry, data);
    expect(next.refused, `round ${round}`).toBeNull();
    expect(stateOf(pid)).toBe('Z');
    await ledger.hold(next, round);
    await ended(next);
    await ended(parent);
  });
}, 7_200_000);

function stateOf(pid: number): string | undefined {
  return /\) (\w)/.exec(readFileSync(`/proc/${pid}/stat`, 'utf8'))?.[1];
}
