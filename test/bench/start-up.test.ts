import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { version } from '../../package.json' with { type: 'json' };
import { buildIfStale } from '../../main/start/build-if-stale.mjs';
import { startHubProcess } from '../e2e/hub-process.ts';
import { folderWithMarks, MARKS } from './million-marks.ts';

/** Starts the built hub and ends it; seconds until it listens, and of the processor that it took for that. */
async function start(data: string): Promise<{ wall: number; cpu: number }> {
  const began = performance.now();
  const hub = await startHubProcess(data);
  const wall = (performance.now() - began) / 1000;
  const cpu = processorSeconds(hub.pid);
  expect(await hub.end('SIGTERM')).toBe(0);
  return { wall, cpu };
}

/** What the system says that a process has used of its processors, threads and all (Linux, 100 ticks a second). */
function processorSeconds(pid: number): number {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return (Number(fields[11]) + Number(fields[12])) / 100;
}

test(`with ${MARKS} marks the hub starts within 4 s without a snapshot and within 2 s with one`, async () => {
  expect(buildIfStale(join(import.meta.dirname, '..', '..'))).toBe(true);
  const data = mkdtempSync(join(tmpdir(), 'shoulderline-bench-'));
  try {
    await folderWithMarks(data, MARKS, version);
    const without = await start(data);
    expect(existsSync(join(data, 'snapshot.bin'))).toBe(true);
    const tries = [await start(data), await start(data), await start(data)];
    const least = (of: 'wall' | 'cpu') => Math.min(...tries.map((each) => each[of]));
    const megabytes = (name: string) => (statSync(join(data, name)).size / 1e6).toFixed(0);
    console.log(
      `start-up with ${MARKS} marks (log ${megabytes('log.jsonl')} MB, snapshot ${megabytes('snapshot.bin')} MB): without snapshot ${without.wall.toFixed(2)} s (processor ${without.cpu.toFixed(2)} s), with it ${least('wall').toFixed(2)} s (processor ${least('cpu').toFixed(2)} s)`,
    );
    // Two threads read it: for a quiet machine of two cores.
    expect(without.wall).toBeLessThan(4);
    // On a machine that does other things too, the processor's time says what this start would take alone.
    expect(Math.min(least('wall'), least('cpu'))).toBeLessThan(2);
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
});
