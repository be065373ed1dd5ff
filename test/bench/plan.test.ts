import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { readJob } from '#core/job/read-job.ts';
import type { Job } from '#core/job/job.ts';
import { planJob } from '#core/planning/plan-job.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';

const METHODS = ['add', 'sub', 'mul', 'div', 'compare', 'ceil'] as const;
type Method = (typeof METHODS)[number];

/** Doors of many openings, half of them arched, each its own mark. */
function jobOf(doors: number): Job {
  const read = readJob({
    format: 1,
    job: 'Bench',
    units: 'in',
    doors: Array.from({ length: doors }, (_, k) => ({
      mark: `D${k}`,
      opening: { width: `${14 + (k % 9)} ${(k % 15) + 1}/16`, height: `${24 + (k % 31)} ${(k % 63) + 1}/64` },
      ...(k % 2 === 0 ? { arch: { rise: '1 3/4', flat: '3/4' } } : {}),
    })),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}

const ROUNDS = 7;

/** Milliseconds of the processor that a run takes, so that whatever else the machine does counts little. */
function timed(run: () => void): number {
  const began = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1000;
}

/** The least disturbed of several runs. */
function least(values: readonly number[]): number {
  return Math.min(...values);
}

/** One operation that a run made: which, on what, with what. */
interface Operation {
  readonly name: Method;
  readonly value: Fraction;
  readonly given: Fraction;
}

/** Every fraction.js operation that a run makes, in its order, operands and all. */
function recorded(run: () => void): Operation[] {
  const operations: Operation[] = [];
  const kept = METHODS.map(
    (name) => [name, Object.getOwnPropertyDescriptor(Fraction.prototype, name)] as const,
  );
  for (const [name, own] of kept) {
    const method: unknown = own?.value;
    if (typeof method !== 'function') throw new Error(`fraction.js has no ${name}`);
    Object.defineProperty(Fraction.prototype, name, {
      ...own,
      value(this: Fraction, given: Fraction): unknown {
        operations.push({ name, value: this, given });
        return Reflect.apply(method, this, [given]);
      },
    });
  }
  try {
    run();
  } finally {
    for (const [name, own] of kept)
      if (own !== undefined) Object.defineProperty(Fraction.prototype, name, own);
  }
  return operations;
}

function countOf(operations: readonly Operation[]): string {
  const counts = new Map<Method, number>();
  for (const { name } of operations) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].map(([name, times]) => `${name} ${(times / 1000).toFixed(1)}`).join(', ');
}

test('time a door at 10 000 doors against 1 000, and the whole against a bare loop of as many operations', () => {
  const profile = builtInProfile('in');
  const [small, large] = [jobOf(1000), jobOf(10_000)];
  const plan = (job: Job) => {
    const planned = planJob(job, profile);
    if (!planned.ok) throw new Error(JSON.stringify(planned.faults[0]));
  };
  const operations = recorded(() => plan(small));
  const perOneDoor = operations.length / 1000;
  const bare = () => {
    for (let k = 0; k < 10; k += 1)
      for (const { name, value, given } of operations)
        if (name === 'ceil') value.ceil();
        else value[name](given);
  };
  plan(large);
  bare();
  // Each round takes the three one after the other, so that a busy machine slows them alike.
  const rounds = Array.from({ length: ROUNDS }, () => ({
    thousand: timed(() => plan(small)),
    tenThousand: timed(() => plan(large)),
    bare: timed(bare),
  }));
  const tenThousand = least(rounds.map((each) => each.tenThousand));
  const perDoor = tenThousand / 10 / least(rounds.map((each) => each.thousand));
  const againstBare = tenThousand / least(rounds.map((each) => each.bare));
  console.log(
    `${perOneDoor.toFixed(1)} fraction operations a door (${countOf(operations)}); ` +
      `${(tenThousand / 10).toFixed(0)} µs a door at 10 000 doors, ${perDoor.toFixed(2)} times that at 1 000; ` +
      `the whole ${againstBare.toFixed(2)} times a bare loop of as many operations`,
  );
  expect(perOneDoor).toBeLessThanOrEqual(230);
  expect(perDoor).toBeLessThan(1.5);
  expect(againstBare).toBeLessThan(10);
});
