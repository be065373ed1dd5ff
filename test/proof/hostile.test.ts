import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { buildIfStale } from '../../main/start/build-if-stale.mjs';
import { freshData, removeData, startHubProcess } from '../e2e/hub-process.ts';
import { harmless, hostile, send } from './hostile.ts';
import { seeded } from './seeded.ts';

const REQUESTS = 10_000;

test(`${REQUESTS} hostile requests are refused with 4xx, the process lives, and its memory stays flat`, async () => {
  expect(buildIfStale(join(import.meta.dirname, '..', '..'))).toBe(true);
  const { seed } = seeded();
  const data = freshData();
  const hub = await startHubProcess(data);
  const statuses = new Map<number, number>();
  const memory: number[] = [];
  try {
    const asked = fc.sample(hostile, { seed, numRuns: REQUESTS });
    for (const [k, each] of asked.entries()) {
      const status = await send(hub.url, each);
      statuses.set(status, (statuses.get(status) ?? 0) + 1);
      const refused = status === 0 || (status >= 400 && status < 500);
      if (!refused && !(harmless(each) && status < 300))
        throw new Error(`seed ${seed}, request ${k}: ${each.method} ${each.path} answered ${status}`);
      if (k % 500 === 499) memory.push(residentMiB(hub.pid));
    }
    expect((await fetch(`${hub.url}/api/health`)).status).toBe(200);
    console.log(
      `hostile requests: seed ${seed}, ${JSON.stringify(Object.fromEntries(statuses))}, resident MiB ${memory.join(' ')}`,
    );
    expect(statuses.get(0) ?? 0).toBeLessThan(REQUESTS / 10);
    const early = Math.max(...memory.slice(4, 10));
    expect(Math.max(...memory.slice(-4))).toBeLessThan(early * 1.15);
  } finally {
    expect(await hub.end('SIGTERM')).toBe(0);
    removeData(data);
  }
});

/** What the system says that a process holds in memory (Linux). */
function residentMiB(pid: number): number {
  const found = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Math.round(Number(found) / 1024);
}
