import { expect, type Page, test } from '@playwright/test';
import { cpSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { errorsOf } from './quiet.ts';
import { onlyPlan, partOf, scan } from './shop-floor.ts';

const ROOT = join(import.meta.dirname, '..', '..');
const NAMED = /(<meta name="screens" content=")([\w-]+)/;

/** The built program once more in a folder of its own, as one whose screens are of this build; its hub. */
function builtAs(folder: string, build: string): string {
  cpSync(join(ROOT, 'dist'), join(folder, 'dist'), { recursive: true });
  cpSync(join(ROOT, 'package.json'), join(folder, 'package.json'));
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  const page = join(folder, 'dist', 'ui', 'ui', 'index.html');
  const html = readFileSync(page, 'utf8');
  expect(html).toMatch(NAMED);
  writeFileSync(page, html.replace(NAMED, `$1${build}`));
  return join(folder, 'dist', 'hub', 'main.js');
}

const screensOf = (page: Page) => page.locator('meta[name="screens"]').getAttribute('content');

test(
  'a screen whose hub has newer screens loads them by itself once nobody is in the middle of anything, and its unsent marks are sent once each',
  { tag: '@proof' },
  async ({ page }) => {
    const errors = await errorsOf(page.context());
    const folder = freshData();
    const data = freshData();
    const entry = builtAs(folder, 'the-newer-build');
    let hub: HubProcess = await startHubProcess(data, 0, ['--demo']);
    const port = Number(new URL(hub.url).port);
    try {
      const plan = await onlyPlan(hub);
      await page.goto(`${hub.url}/station/milling`);
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
      await expect(page.locator('[data-loaded="true"]')).toBeVisible();
      const before = await screensOf(page);
      expect(before).not.toBe('the-newer-build');
      await expect.poll(() => page.evaluate(async () => (await caches.match('/')) !== undefined)).toBe(true);
      await hub.end('SIGKILL');
      await expect(page.locator('[data-message="hub-away"]')).toBeVisible();
      for (const name of ['rail-top', 'rail-bottom', 'stile-left']) {
        const part = partOf(plan, 'BENCH-1', name);
        await scan(page, part.code);
        await expect(page.locator(`main[data-code="${part.code}"]`)).toHaveAttribute('data-stage', 'mill');
        await page.waitForTimeout(400);
        await page.click('[data-action="done"]');
        await expect(page.locator(`main[data-code="${part.code}"]`)).toHaveCount(0);
      }
      hub = await startHubProcess(data, port, [], {}, entry);
      await expect.poll(() => screensOf(page).catch(() => null), { timeout: 15_000 }).toBe('the-newer-build');
      await expect(page.locator('[data-loaded="true"]')).toBeVisible();
      // What is kept for when the hub is away is the newer page, too.
      await expect
        .poll(() => page.evaluate(async () => (await caches.match('/'))?.text()))
        .toContain('the-newer-build');
      const events = await (await fetch(`${hub.url}/api/export`)).text();
      for (const name of ['rail-top', 'rail-bottom', 'stile-left']) {
        const { code } = partOf(plan, 'BENCH-1', name);
        expect(events.match(new RegExp(`"code":"${code}"[^{}]*"mark":"done"`, 'g')), name).toHaveLength(1);
      }
      const loaded = await page.evaluate(() => performance.timeOrigin);
      await page.waitForTimeout(2000);
      expect(await page.evaluate(() => performance.timeOrigin)).toBe(loaded);
      expect(errors).toEqual([]);
    } finally {
      await hub.end('SIGTERM');
      removeData(data);
      removeData(folder);
    }
  },
);
