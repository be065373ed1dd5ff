import { join } from 'node:path';
import { setPriority } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { buildIfStale } from '../../main/start/build-if-stale.mjs';
import { percentile } from '../bench/million-marks.ts';
import { NetworkHub } from '../e2e/network-hub.ts';
import { type Aimed, type AttackName, ATTACKS, type Came } from './attacks/attacks.ts';
import { forgetMost, mostMegabytes } from './memory.ts';
import { orderedProcess } from './ordered-process.ts';
import type { Order, Report } from './stations/floor.ts';
import { type StationTold } from './stations/station.ts';
import { wayOf } from './stations/ways.ts';

const root = join(import.meta.dirname, '..', '..');
const SECONDS = Number(process.env.ATTACK_SECONDS ?? '15');
const ONLY = process.env.ONLY;
const STATIONS = 10;
const PER_SECOND = 20;
/**
 * Without the limits it was 3500. Where very much comes and goes, the heap grows before it is cleaned, and stays there: 100 s
 * of 5500 connections a second keep it between 240 and 280; after twenty ways in a row it was at 300 once, and once at 384.
 */
const MOST_MEGABYTES = 512;
const MOST_MS = 1000;
/** Each attack from a machine of its own, as one that was shut out does no more; and some from very many. */
const CASES: readonly { readonly name: AttackName; readonly from: readonly string[] }[] = [
  ...ATTACKS.map((name, k) => ({ name, from: [`127.0.${k + 2}.1`] })),
  ...(
    [
      'two thousand encrypted connections that ask nothing',
      'handshakes at full speed',
      'requests at full speed, HTTP/2',
    ] as const
  ).map((name, k) => ({ name, from: Array.from({ length: 200 }, (_, m) => `127.0.${k + 100}.${m + 1}`) })),
].filter(({ name }) => ONLY === undefined || name.includes(ONLY));
const SAVED = z.object({ parts: z.array(z.object({ code: z.string(), door: z.string() })) });

const job = (id: string) => ({
  format: 1,
  id,
  job: id,
  units: 'in',
  doors: [{ mark: id.slice(0, 1).toUpperCase(), quantity: 20, opening: { width: '16', height: '30' } }],
});

test(`a machine that means ill, ${SECONDS} s each way, holds up neither the stations nor the hub's own machine`, async () => {
  expect(buildIfStale(root)).toBe(true);
  const hub = await NetworkHub.start();
  const over = await orderedProcess<Order, Report>('stations/floor');
  const here = await orderedProcess<Order, Report>('stations/floor');
  try {
    const blanks = async (id: string) => {
      const { parts } = SAVED.parse(await hub.ask('POST', '/jobs', job(id)));
      return [...new Map(parts.map(({ door, code }) => [door, code])).values()];
    };
    const codes = { over: await blanks('over'), here: await blanks('here') };
    const stations = async (name: 'over' | 'here'): Promise<StationTold[]> => {
      const all: StationTold[] = [];
      for (let k = 0; k < STATIONS; k += 1)
        all.push({
          by: name === 'here' ? 'http' : k < 2 ? 'https' : 'h2',
          url: name === 'here' ? hub.url : hub.screens,
          from: name === 'here' ? '127.0.0.1' : `127.0.1.${k + 1}`,
          ca: hub.authority,
          cookie: name === 'here' ? '' : await hub.pair(`station ${k + 1}`),
          code: codes[name][k] ?? '',
          resumes: 'by-place',
        });
      return all;
    };
    const late = { ...(await stations('over')).at(-1), by: 'h2', from: '127.0.1.99' } as StationTold;
    await over.order({ kind: 'open', floor: 'all', stations: await stations('over') });
    await here.order({ kind: 'open', floor: 'all', stations: await stations('here') });
    const lostTablet = await hub.pair('lost tablet');
    const marking = (seconds: number) =>
      Promise.all(
        [over, here].map((floor) =>
          floor.order({ kind: 'pace', floor: 'all', perSecond: PER_SECOND, seconds }),
        ),
      );
    const figures = (reports: readonly Report[]) =>
      reports.map(({ answered }) => ({
        p99: percentile(
          answered.map(({ ms }) => ms),
          0.99,
        ),
        again: answered.filter(({ atOnce }) => !atOnce).length,
      }));
    /** How long a screen that is loaded now waits for its jobs. */
    const comes = async () => {
      const way = wayOf(late);
      const began = performance.now();
      for (let tries = 0; tries < 50; tries += 1) {
        try {
          const answer = await way.ask({ method: 'GET', path: '/api/jobs' });
          answer.leave();
          if (answer.status === 200) break;
        } catch {
          await pause(100);
        }
      }
      way.close();
      return performance.now() - began;
    };
    const [quietOver, quietHere] = figures(await marking(SECONDS));
    console.log(
      `quiet: 99th percentile over the network ${String(quietOver?.p99.toFixed(0))} ms, here ${String(quietHere?.p99.toFixed(0))} ms; ${mostMegabytes(hub.pid).toFixed(0)} MB`,
    );
    const attacker = await orderedProcess<{ name: AttackName; aimed: Aimed }, Came>('attacks/attacker');
    // It would have a machine of its own.
    setPriority(attacker.pid, 10);
    try {
      for (const { name, from } of CASES) {
        const what = from.length === 1 ? name : `${name}, from ${from.length} machines`;
        forgetMost(hub.pid);
        const aimed: Aimed = {
          screens: hub.screens,
          trust: hub.trust,
          ca: hub.authority,
          from,
          cookie: lostTablet,
          seconds: SECONDS,
        };
        const attacking = attacker.order({ name, aimed });
        const marked = marking(SECONDS);
        await pause((SECONDS * 1000) / 2);
        const letIn = await comes();
        const [network, own] = figures(await marked);
        const came = await attacking;
        const most = mostMegabytes(hub.pid);
        console.log(
          `${what}: ${came.times} times, ${came.most} connections, ${came.left} of them left; 99th percentile over the network ${String(network?.p99.toFixed(0))} ms, here ${String(own?.p99.toFixed(0))} ms; ${network?.again} marks sent again; a screen came in ${letIn.toFixed(0)} ms; at most ${most.toFixed(0)} MB`,
        );
        expect.soft(network?.p99, what).toBeLessThan(MOST_MS);
        expect.soft(own?.p99, what).toBeLessThan(MOST_MS);
        expect.soft(network?.again, what).toBe(0);
        expect.soft(letIn, what).toBeLessThan(5000);
        expect.soft(most, what).toBeLessThan(MOST_MEGABYTES);
        await pause(1000);
      }
    } finally {
      attacker.end();
    }
  } finally {
    over.end();
    here.end();
    await hub.stop();
  }
});
