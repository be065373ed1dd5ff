import { type BrowserContext, chromium, expect, test } from '@playwright/test';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import config from '../../playwright.config.ts';
import { NetworkHub } from './network-hub.ts';
import { faultsOf } from './shop-floor.ts';

let hub: NetworkHub;
let profile: string;
test.beforeAll(async () => {
  hub = await NetworkHub.start();
  profile = mkdtempSync(join(tmpdir(), 'shoulderline-profile-'));
});
test.afterAll(async () => {
  await hub.stop();
  rmSync(profile, { recursive: true, force: true });
});

/** One and the same browser, that trusts the shop's certificate or does not. */
function browser(trusts: boolean): Promise<BrowserContext> {
  const { launchOptions = {} } = config.use ?? {};
  return chromium.launchPersistentContext(profile, {
    ...launchOptions,
    viewport: { width: 1280, height: 800 },
    args: [
      ...(launchOptions.args ?? []),
      ...(trusts ? [`--ignore-certificate-errors-spki-list=${hub.pin()}`] : []),
    ],
  });
}

test(
  'a device that has lost its trust goes on with the screens it kept, and says where to trust the shop again; with the hub away it does not',
  { tag: '@proof' },
  async () => {
    const before = await browser(true);
    const page = await before.newPage();
    await page.goto(`${hub.screens}/pairing`);
    await page.fill('[name="code"]', (await hub.offer()).code);
    await page.fill('[name="name"]', 'Tablet');
    await page.click('[data-choose-station="milling"]');
    await page.click('[data-action="pair"]');
    await expect(page.locator('[data-loaded="true"]')).toBeVisible();
    await page.waitForFunction(
      async () =>
        (await caches.keys()).length > 0 && (localStorage.getItem('shoulderline.trust') ?? '') !== '',
    );
    await page.waitForFunction(async () => (await (await caches.open('screens')).match('/')) !== undefined);
    // Chromium writes what a page remembers some seconds later.
    await page.waitForTimeout(6000);
    await before.close();

    const after = await browser(false);
    const again = await after.newPage();
    await again.goto(`${hub.screens}/station/milling`);
    const away = again.locator('[data-message="hub-away"]');
    await expect(away).toBeVisible({ timeout: 20_000 });
    await expect(away).toContainText(`Open ${hub.trust} on it`, { timeout: 20_000 });
    await expect(again.locator('[data-loaded="true"]')).toBeVisible();
    expect(await faultsOf(again)).toEqual([]);
    await again.screenshot({ path: join(import.meta.dirname, '..', '..', 'test-results', 'trust-lost.png') });
    await after.close();

    const trusting = await browser(true);
    const back = await trusting.newPage();
    await back.goto(`${hub.screens}/station/milling`);
    await expect(back.locator('[data-loaded="true"]')).toBeVisible();
    await hub.stop();
    await expect(back.locator('[data-message="hub-away"]')).toBeVisible();
    await back.waitForTimeout(13_000);
    await expect(back.locator('[data-message="hub-away"]')).toContainText(
      'The shop computer does not answer',
    );
    await trusting.close();
  },
);
