import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { LOG_FORMAT, readEntry } from '#main/store/log/log-entry.ts';
import { readLine } from '#main/store/log/log-line.ts';
import { buildIfStale } from '../../main/start/build-if-stale.mjs';
import { percentile } from '../bench/million-marks.ts';
import { NetworkHub } from '../e2e/network-hub.ts';
import { mostMegabytes } from './memory.ts';
import { orderedProcess } from './ordered-process.ts';
import type { Order, Report } from './stations/floor.ts';
import type { Answered, StationTold } from './stations/station.ts';

const root = join(import.meta.dirname, '..', '..');
const STATIONS = 50;
/** So many of them speak HTTP/1.1. */
const BY_ONE = 10;
const PER_SECOND = 20;
/** Seconds of marks over the network; half as many again are made at a hub's own machine, by turns. */
const SECONDS = Number(process.env.LOAD_SECONDS ?? '300');
const ROUND_SECONDS = Math.min(20, SECONDS / 2);
const ROUNDS = Math.max(2, Math.round(SECONDS / ROUND_SECONDS));
const MOST_MEGABYTES = 250;
const MOST_TIMES = 3;
const BACK_MS = 5000;

const JOB = {
  format: 1,
  id: 'fifty',
  job: 'Fifty',
  units: 'in',
  doors: [{ mark: 'F', quantity: 100, opening: { width: '16', height: '30' } }],
};
const SAVED = z.object({ parts: z.array(z.object({ code: z.string(), door: z.string() })) });

/** One blank of each door, for so many stations. */
async function blanksOf(hub: NetworkHub): Promise<string[]> {
  const { parts } = SAVED.parse(await hub.ask('POST', '/jobs', JOB));
  return [...new Map(parts.map(({ door, code }) => [door, code])).values()].slice(0, STATIONS);
}

/** The marks that the log holds, in its order: number and id. */
function logged(hub: NetworkHub): { readonly seq: number; readonly id: string }[] {
  return readFileSync(join(hub.data, 'log.jsonl'), 'utf8')
    .split('\n')
    .flatMap((line) => {
      const read = line === '' ? null : readLine(Buffer.from(line));
      if (read === null) return [];
      const entry = readEntry(read.entry, LOG_FORMAT);
      return entry?.kind === 'mark' ? [{ seq: read.seq, id: entry.mark.mark.id }] : [];
    });
}

const first = (answered: readonly Answered[]) => answered.flatMap(({ ms, atOnce }) => (atOnce ? [ms] : []));
const ms = (value: number) => `${value.toFixed(1)} ms`;
const said = (times: readonly number[]) =>
  `${times.length} marks, median ${ms(percentile(times, 0.5))}, 99th percentile ${ms(percentile(times, 0.99))}, longest ${ms(Math.max(...times))}`;

test(`fifty stations over the network mark for ${SECONDS} s, and their hub is killed once: none lost, none doubled, little memory, quick, and all back in time`, async () => {
  expect(buildIfStale(root)).toBe(true);
  const floor = await orderedProcess<Order, Report>('stations/floor');
  const network = await NetworkHub.start();
  // What it is held to: stations that speak http on loopback, to a hub of their own.
  const loopback = await NetworkHub.start();
  try {
    const stations: StationTold[] = [];
    const plain: StationTold[] = [];
    const resumes = (k: number) => (k % 2 === 0 ? 'by-place' : 'by-id');
    const codes = { network: await blanksOf(network), loopback: await blanksOf(loopback) };
    const ca = network.authority;
    for (let k = 0; k < STATIONS; k += 1) {
      stations.push({
        by: k % STATIONS < BY_ONE ? 'https' : 'h2',
        url: network.screens,
        from: `127.0.1.${k + 1}`,
        ca,
        cookie: await network.pair(`station ${k + 1}`),
        code: codes.network[k] ?? '',
        resumes: resumes(k),
      });
      plain.push({
        by: 'http',
        url: loopback.url,
        from: '127.0.0.1',
        ca,
        cookie: '',
        code: codes.loopback[k] ?? '',
        resumes: resumes(k),
      });
    }
    await floor.order({ kind: 'open', floor: 'network', stations });
    await floor.order({ kind: 'open', floor: 'loopback', stations: plain });

    const over: Answered[] = [];
    const here: Answered[] = [];
    const memory = { network: 0, loopback: 0 };
    const still = { p99: 0, most: 0 };
    const streams = { before: 0, after: 0 };
    let back: number[] = [];
    let loaded: number[] = [];
    let waited: Answered[] = [];
    const marks = async (name: 'network' | 'loopback', seconds: number) => {
      const told = await floor.order({ kind: 'pace', floor: name, perSecond: PER_SECOND, seconds });
      still.p99 = Math.max(still.p99, told.still.p99);
      still.most = Math.max(still.most, told.still.most);
      return told.answered;
    };
    const look = (name: 'network' | 'loopback') => floor.order({ kind: 'tell', floor: name });

    // What is first asked of either hub is not measured.
    const warm = await marks('network', 5);
    await marks('loopback', 5);
    await look('network');
    still.p99 = still.most = 0;
    for (let round = 0; round < ROUNDS; round += 1) {
      if (round === Math.floor(ROUNDS / 2)) {
        memory.network = Math.max(memory.network, mostMegabytes(network.pid));
        streams.before = count(await look('network'));
        const marking = marks('network', ROUND_SECONDS);
        await pause((ROUND_SECONDS * 1000) / 3);
        await network.killed();
        const ready = performance.timeOrigin + performance.now();
        const answered = await marking;
        await pause(BACK_MS);
        const told = await look('network');
        streams.after = count(told);
        back = told.stations.map(({ beats }) => (beats.find((at) => at > ready) ?? Infinity) - ready);
        loaded = told.stations.map((each) => each.loaded - ready);
        waited = answered.filter(({ atOnce }) => !atOnce);
        over.push(...answered);
      } else over.push(...(await marks('network', ROUND_SECONDS)));
      here.push(...(await marks('loopback', ROUND_SECONDS / 2)));
    }
    await pause(2000);
    memory.network = Math.max(memory.network, mostMegabytes(network.pid));
    memory.loopback = mostMegabytes(loopback.pid);
    const { stations: heard } = await look('network');
    const log = logged(network);
    const [quick, usual] = [first(over), first(here)];
    const times = percentile(quick, 0.99) / percentile(usual, 0.99);
    console.log(
      [
        `network: ${said(quick)}; at most ${memory.network.toFixed(0)} MB`,
        `http on loopback: ${said(usual)}; at most ${memory.loopback.toFixed(0)} MB; 99th percentile ${times.toFixed(2)} times as long over the network`,
        `killed: first beats ${ms(Math.min(...back))} to ${ms(Math.max(...back))} after the ready line, all loaded ${ms(Math.max(...loaded))} after it; ${waited.length} marks waited for it; ${streams.after - streams.before} streams opened anew`,
        `the stations’ own process stood still: 99th percentile ${ms(still.p99)}, at most ${ms(still.most)}`,
      ].join('\n'),
    );

    const answered = [...warm, ...over].map(({ id }) => id);
    const numbers = log.map(({ seq }) => seq);
    expect(answered).toHaveLength(PER_SECOND * (5 + ROUNDS * ROUND_SECONDS));
    expect(new Set(heard.flatMap(({ faults }) => faults))).toEqual(new Set());
    expect(log.map(({ id }) => id).toSorted()).toEqual(answered.toSorted());
    const otherwise = heard.flatMap((each, k) => {
      const how = differing(each.heard, numbers);
      return how === null ? [] : [{ station: k + 1, streams: each.streams, ...how }];
    });
    expect(otherwise).toEqual([]);
    expect(waited.length).toBeGreaterThan(0);
    expect(Math.max(...back)).toBeLessThan(BACK_MS);
    expect(memory.network).toBeLessThan(MOST_MEGABYTES);
    expect(times).toBeLessThan(MOST_TIMES);
  } finally {
    floor.end();
    await network.stop();
    await loopback.stop();
  }
});

/** Where two runs of numbers first differ, with what stands around there; null where they are the same. */
function differing(heard: readonly number[], all: readonly number[]): object | null {
  const at = [...all, 0].findIndex((seq, k) => (heard[k] ?? 0) !== seq);
  const around = (run: readonly number[]) => run.slice(Math.max(0, at - 3), at + 6);
  return at < 0 && heard.length === all.length
    ? null
    : { at, of: [heard.length, all.length], heard: around(heard), all: around(all) };
}

/** How many streams were opened. */
function count({ stations }: Report): number {
  return stations.reduce((sum, { streams }) => sum + streams, 0);
}
