import { chromium } from '@playwright/test';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { jobsAnswer } from '#core/api/jobs-api.ts';
import { buildIfStale } from '../../../main/start/build-if-stale.mjs';
import { findBrowser } from '../../../main/start/find-browser.mjs';
import packageFile from '../../../package.json' with { type: 'json' };
import { startHubProcess } from '../../e2e/hub-process.ts';
import { threeHundredDoors } from '../../e2e/shop-floor.ts';
import { percentile } from '../million-marks.ts';
import { fullStore } from './full-store.ts';
import { PaintedScreen } from './painted-screen.ts';

const PARTS = Number(process.env.BENCH_PARTS ?? '100000');
const SCANS = Number(process.env.BENCH_SCANS ?? '200');
/** The dist folder of an earlier build, with its node_modules beside or above it: both are scanned by turns. */
const BEFORE = process.env.BENCH_BEFORE;
/** Between two runs of one build medians differ by about so much. */
const MOST_OF_BEFORE = 1.2;

test('from a scanner’s last key to the painted setup: median under 50 ms, 99th percentile under 150 ms, with 300 doors current in a store of 100 000 parts', async () => {
  buildIfStale(join(import.meta.dirname, '..', '..', '..'));
  const data = mkdtempSync(join(tmpdir(), 'shoulderline-screen-bench-'));
  const filled = await fullStore(data, packageFile.version, PARTS, threeHundredDoors(), 'mortise');
  console.log(`${filled.parts} parts, ${filled.marks} marks written`);
  const copy = `${data}-before`;
  if (BEFORE !== undefined) cpSync(data, copy, { recursive: true });
  const hub = await startHubProcess(data);
  const before =
    BEFORE === undefined ? null : await startHubProcess(copy, 0, [], {}, join(BEFORE, 'hub', 'main.js'));
  const found = findBrowser();
  const browser = await chromium.launch({
    ...(found === null ? {} : { executablePath: found }),
    args: ['--disable-gpu', '--disable-background-networking', '--disable-component-update', '--no-sandbox'],
  });
  try {
    const { jobs } = jobsAnswer.parse(await (await fetch(`${hub.url}/api/jobs`)).json());
    expect(jobs.filter(({ left }) => left > 0).map(({ doors }) => doors)).toEqual([300]);
    const screen = await PaintedScreen.open(browser, hub.url);
    const older = before === null ? null : await PaintedScreen.open(browser, before.url);
    const stiles = filled.doors.flatMap(({ parts }) =>
      parts.filter(({ stages }) => stages.some(({ stage }) => stage === 'mortise')),
    );
    for (let k = 0; k < SCANS; k += 1)
      for (const each of [screen, older]) await each?.scan(stiles[(k * 7) % stiles.length]?.code ?? '', k);
    const { took, slow } = screen;
    const [median, late] = [percentile(took, 0.5), percentile(took, 0.99)];
    console.log(
      `scan to paint: median ${median.toFixed(1)} ms, 99th percentile ${late.toFixed(1)} ms, slowest ${Math.max(...took).toFixed(1)} ms, ${slow} bursts too slow for a scanner, load ${loadavg()[0]?.toFixed(1) ?? ''}`,
    );
    if (older !== null) {
      const ratio = median / percentile(older.took, 0.5);
      console.log(
        `by turns with the build before, median ${percentile(older.took, 0.5).toFixed(1)} ms: ${ratio.toFixed(2)} times as long`,
      );
      expect(ratio).toBeLessThan(MOST_OF_BEFORE);
    }
    expect(median).toBeLessThan(50);
    expect(late).toBeLessThan(150);
  } finally {
    await browser.close();
    await hub.end('SIGTERM');
    await before?.end('SIGTERM');
    for (const folder of [data, copy]) rmSync(folder, { recursive: true, force: true });
  }
});
