import { readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { buildIfStale } from '../../main/start/build-if-stale.mjs';
import { freshData, type HubProcess, removeData, startHubProcess } from '../e2e/hub-process.ts';

const root = join(import.meta.dirname, '..', '..');

/** A job of so many doors, so many of each mark; no two marks alike. */
const jobOf = (id: string, doors: number, each: number, more: object = {}) => ({
  format: 1,
  id,
  job: id,
  units: 'in',
  doors: Array.from({ length: doors / each }, (_, k) => ({
    mark: `${id.slice(0, 1).toUpperCase()}${k + 1}`,
    quantity: each,
    opening: {
      width: `${14 + (k % 20)} ${1 + 2 * (k % 8)}/16`,
      height: `${24 + (k % 40)} ${1 + 2 * ((k >> 3) % 8)}/16`,
    },
    ...more,
  })),
});

/** How long the hub's thread stood still at the longest since it was asked last, in milliseconds. */
async function stoodStill({ pid }: HubProcess, file: string): Promise<number> {
  rmSync(file, { force: true });
  process.kill(pid, 'SIGUSR2');
  for (let k = 0; k < 500; k += 1) {
    await pause(10);
    try {
      const text = readFileSync(file, 'utf8');
      if (text !== '') return Number(text);
    } catch {
      // It is not written yet.
    }
  }
  throw new Error('the hub does not tell how long it stood still');
}

const hubOn = (data: string, file: string) =>
  startHubProcess(data, 0, [], {
    NODE_OPTIONS: `--import ${join(import.meta.dirname, 'loop-delay.mjs')}`,
    LOOP_DELAY_FILE: file,
  });

/** So long at the longest may the hub's thread stand still, whatever is asked of a job of 10 000 doors. */
const MOST_MS = 250;

test.each([
  ['25 doors of each of 400 marks', 25],
  ['5 doors of each of 2000 marks', 5],
])(
  'no request on a job of 10 000 doors, %s, holds up the hub’s own thread',
  async (_what, each) => {
    expect(buildIfStale(root)).toBe(true);
    const data = freshData();
    const file = join(data, 'delay');
    let hub = await hubOn(data, file);
    const told: string[] = [];
    const during = async (what: string, method: string, path: string, body?: unknown) => {
      await stoodStill(hub, file);
      const began = performance.now();
      const response = await fetch(`${hub.url}/api${path}`, {
        method,
        ...(body === undefined
          ? {}
          : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
      });
      let bytes = 0;
      const pieces: Uint8Array[] = [];
      for await (const piece of response.body ?? []) {
        bytes += piece.length;
        if (bytes < 40e6) pieces.push(piece);
      }
      const ms = performance.now() - began;
      const still = await stoodStill(hub, file);
      told.push(
        `${what}: ${response.status}, ${(ms / 1000).toFixed(2)} s, ${(bytes / 1e6).toFixed(1)} MB; stood still ${still.toFixed(0)} ms`,
      );
      expect.soft(response.status, what).toBeLessThan(300);
      expect.soft(still, what).toBeLessThan(MOST_MS);
      return bytes < 40e6 ? Buffer.concat(pieces).toString() : '';
    };
    try {
      await pause(500);
      told.push(`idle: stood still ${(await stoodStill(hub, file)).toFixed(0)} ms`);
      const saved = JSON.parse(await during('POST', 'POST', '/jobs', jobOf('large', 10_000, each))) as {
        parts: { code: string; door: string }[];
      };
      const code = saved.parts[40_000]?.code ?? '';
      const mark = (stage: string, n: number) => ({
        id: `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`,
        code,
        station: 'milling',
        stage,
        mark: 'done',
        at: new Date().toISOString(),
      });
      await during('scan', 'GET', `/parts/${code}?station=milling`);
      await during('mark', 'POST', '/marks', mark('mill', 1));
      const changed = { ...jobOf('large', 10_000, each), defaults: { thickness: '7/8' } };
      await during('dry PUT', 'PUT', '/jobs/large?dry=1', { revision: 1, file: changed });
      await during('PUT', 'PUT', '/jobs/large', { revision: 1, file: changed });
      await during('measured', 'PUT', '/jobs/large/measured', {
        revision: 2,
        measured: { thickness: '27/32' },
      });
      await during('back', 'POST', '/jobs/large/revisions/1/restore', { revision: 3 });
      await during('plan', 'GET', '/jobs/large');
      await during('doors', 'GET', '/jobs/large/doors');
      await during('door', 'GET', '/jobs/large/doors/L1-1?why=1');
      await during('file', 'GET', '/jobs/large/file');
      await during('progress', 'GET', '/jobs/large/progress');
      await during('jobs', 'GET', '/jobs');
      await during('board', 'GET', '/board');
      await during('board again', 'GET', '/board');
      await during('to print', 'GET', '/stickers');
      const codes = saved.parts.map((part) => part.code);
      await during('printed', 'POST', '/jobs/large/printed', { codes, stock: 'letter-3x10' });
      await during('to print again', 'GET', '/stickers');
      await during('printed list', 'GET', '/jobs/large/printed');
      await during('PUT after printing', 'PUT', '/jobs/large', { revision: 4, file: changed });
      await during('sheet', 'GET', '/jobs/large/papers.pdf?kind=sheet');
      await during('backup', 'POST', '/backups', {});
      await during('bin', 'DELETE', '/jobs/large');
      await during('bin list', 'GET', '/bin');
      await during('restore', 'POST', '/bin/large/restore', {});
      await hub.end('SIGTERM');
      hub = await hubOn(data, file);
      told.push(`after the start: stood still ${(await stoodStill(hub, file)).toFixed(0)} ms`);
      await during('first scan', 'GET', `/parts/${code}?station=milling`);
    } finally {
      console.log(told.join('\n'));
      await hub.end('SIGTERM');
      removeData(data);
    }
  },
  300_000,
);
