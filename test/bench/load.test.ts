import { spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { buildIfStale } from '../../main/start/build-if-stale.mjs';
import { BENCH_JOB, percentile } from './million-marks.ts';

const CLIENTS = 50;
const MINUTES = Number(process.env.BENCH_MINUTES ?? '10');
const BURST_SECONDS = 20;
const root = join(import.meta.dirname, '..', '..');

/** The built hub, with a way to ask how much memory its data take. */
async function hubWithHeap(data: string) {
  const child = spawn(
    process.execPath,
    [
      '--expose-gc',
      '--import',
      join(import.meta.dirname, 'tell-heap.mjs'),
      join(root, 'dist', 'hub', 'main.js'),
    ],
    {
      env: { ...process.env, SHOULDERLINE_DATA: data, SHOULDERLINE_PORT: '0' },
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  const said = (stream: NodeJS.ReadableStream, pattern: RegExp) =>
    new Promise<string>((found) => {
      const look = (chunk: Buffer) => {
        const match = pattern.exec(chunk.toString())?.[1];
        if (match === undefined) return;
        stream.off('data', look);
        found(match);
      };
      stream.on('data', look);
    });
  const url = await said(child.stdout, /LISTENING (\S+)/);
  return {
    url,
    heap() {
      const told = said(child.stderr, /HEAP (\d+)/);
      child.kill('SIGUSR2');
      return told.then(Number);
    },
    end() {
      child.kill('SIGTERM');
      return new Promise<number | null>((ended) => child.once('exit', ended));
    },
  };
}

const agent = new Agent({ keepAlive: true, maxSockets: 4 * CLIENTS });

function post(url: string, path: string, body: unknown): Promise<{ status: number; text: string }> {
  return new Promise((told, failed) => {
    const asked = request(
      `${url}/api${path}`,
      { method: 'POST', agent, headers: { 'content-type': 'application/json' } },
      (response) => {
        let text = '';
        response.setEncoding('utf8');
        response.on('data', (chunk: string) => (text += chunk));
        response.on('end', () => told({ status: response.statusCode ?? 0, text }));
      },
    );
    asked.on('error', failed);
    asked.end(JSON.stringify(body));
  });
}

/** An open event stream: how many marks it was told, and whether each number came once and in order. */
async function listen(url: string) {
  const heard = { marks: 0, last: 0, wrong: 0 };
  let open: () => void;
  const opened = new Promise<void>((done) => (open = done));
  const asked = request(`${url}/api/events`, (response) => {
    open();
    let rest = '';
    response.setEncoding('utf8');
    response.on('error', () => undefined);
    response.on('data', (chunk: string) => {
      rest += chunk;
      for (let at = rest.indexOf('\nevent: mark'); at >= 0; at = rest.indexOf('\nevent: mark')) {
        const seq = Number(/id: (\d+)$/.exec(rest.slice(0, at))?.[1]);
        heard.marks += 1;
        if (seq <= heard.last) heard.wrong += 1;
        heard.last = seq;
        rest = rest.slice(at + 1);
      }
    });
  });
  asked.on('error', () => undefined);
  asked.end();
  await opened;
  return { heard, end: () => asked.destroy() };
}

/** Marks at an even pace from all clients together, each waiting for its answer; milliseconds that each answer took. */
async function marksAt(
  url: string,
  perSecond: number,
  seconds: number,
  codes: readonly string[],
  turns: Map<string, number>,
) {
  const times: number[] = [];
  const until = performance.now() + seconds * 1000;
  const pace = (CLIENTS / perSecond) * 1000;
  const client = async (code: string, k: number) => {
    let next = performance.now() + (k / CLIENTS) * pace;
    while (next < until) {
      await new Promise((over) => setTimeout(over, Math.max(0, next - performance.now())));
      const turn = turns.get(code) ?? 0;
      turns.set(code, turn + 1);
      const began = performance.now();
      const { status, text } = await post(url, '/marks', {
        id: randomUUID(),
        code,
        station: 'milling',
        stage: 'mill',
        mark: turn % 2 === 0 ? 'done' : 'undo',
        at: new Date().toISOString(),
      });
      times.push(performance.now() - began);
      if (status !== 200) throw new Error(`${status} ${text}`);
      next += pace;
    }
  };
  await Promise.all(codes.map(client));
  return times;
}

test(`20 marks/s for ${MINUTES} minutes and 1000/s for ${BURST_SECONDS} s, with 50 streams: none lost, none doubled, quick, and little kept of each`, async () => {
  expect(buildIfStale(root)).toBe(true);
  const data = mkdtempSync(join(tmpdir(), 'shoulderline-bench-'));
  const hub = await hubWithHeap(data);
  try {
    const saved = JSON.parse((await post(hub.url, '/jobs', BENCH_JOB)).text) as {
      parts: { code: string; door: string }[];
    };
    const doors = new Map(saved.parts.map(({ door, code }) => [door, code]));
    const codes = [...doors.values()].slice(0, CLIENTS);
    const streams = await Promise.all(codes.map(() => listen(hub.url)));
    const turns = new Map<string, number>();
    await marksAt(hub.url, 200, 10, codes, turns);
    const warm = [...turns.values()].reduce((a, b) => a + b, 0);
    const before = await hub.heap();
    const steady = await marksAt(hub.url, 20, MINUTES * 60, codes, turns);
    const burst = await marksAt(hub.url, 1000, BURST_SECONDS, codes, turns);
    await new Promise((over) => setTimeout(over, 2000));
    const after = await hub.heap();
    const marks = steady.length + burst.length;
    const kept = (after - before) / marks;
    const say = (times: readonly number[]) =>
      `${times.length} marks, median ${percentile(times, 0.5).toFixed(1)} ms, 99th percentile ${percentile(times, 0.99).toFixed(1)} ms`;
    console.log(
      `load: steady ${say(steady)}; burst ${say(burst)} (${(burst.length / BURST_SECONDS).toFixed(0)}/s); heap ${(before / 1e6).toFixed(1)} to ${(after / 1e6).toFixed(1)} MB, ${kept.toFixed(0)} bytes a mark`,
    );
    for (const { heard } of streams) expect(heard).toMatchObject({ marks: marks + warm, wrong: 0 });
    const lines = (await (await fetch(`${hub.url}/api/health`)).json()) as {
      more: { log: { lines: number } };
    };
    expect(lines.more.log.lines).toBe(marks + warm + 1);
    streams.forEach((stream) => stream.end());
    expect(percentile(steady, 0.99)).toBeLessThan(50);
    expect(percentile(burst, 0.99)).toBeLessThan(50);
    expect(kept).toBeLessThan(400);
  } finally {
    expect(await hub.end()).toBe(0);
    rmSync(data, { recursive: true, force: true });
  }
});
