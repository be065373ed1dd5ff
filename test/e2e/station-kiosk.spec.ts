import { expect, type Page, test } from '@playwright/test';
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { freshData, removeData } from './hub-process.ts';
import { Kiosk, until } from './kiosk-process.ts';
import { NetworkHub } from './network-hub.ts';
import { keep } from './shop-floor.ts';

/** `npm start -- --station` with a real Chromium, which shows no window here, against a hub whose network is on. */
let hub: NetworkHub;
let data = '';
let station: Kiosk;
test.beforeEach(async () => {
  hub = await NetworkHub.start();
  data = freshData();
});
test.afterEach(async () => {
  await station.end();
  await hub.stop();
  removeData(data);
});

/** The page once it is at this address. */
function pageAt(address: string): Promise<Page> {
  return until(`a page at ${address}`, async () => {
    const page = await station.page();
    return page.url().startsWith(address) ? page : null;
  });
}

/** Pairs the station as it is asked to at its first start, at the table saw. */
async function pairedStation(): Promise<Page> {
  station = Kiosk.start(data, [
    '--station',
    hub.screens,
    '--fingerprint',
    String((await hub.network()).fingerprint),
  ]);
  const page = await pageAt(`${hub.screens}/pairing`);
  await pair(page);
  return page;
}

async function pair(page: Page): Promise<void> {
  const { code } = await hub.offer();
  await page.fill('[name="code"]', code);
  await page.fill('[name="name"]', 'Old PC at the saw');
  await page.click('[data-choose-station="table-saw"]');
  await page.click('[data-action="pair"]');
  await expect(page).toHaveURL(`${hub.screens}/station/table-saw`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await expect
    .poll(() => page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length))
    .toBe(1);
}

const atTheSaw = (page: Page) => expect(page.getByRole('heading', { name: 'Table saw' })).toBeVisible();

test('a station is trusted by a compared fingerprint, pairs and marks like any device, and at the next start is at its station at once', async () => {
  station = Kiosk.start(data, ['--station', hub.screens]);
  const asked = await pageAt('http://127.0.0.1:');
  await expect(asked.locator('[data-station="first"]')).toBeVisible();
  const shown = (await asked.locator('[data-fingerprint]').innerText()).replace(/\s/g, '');
  expect(shown).toBe((await hub.network()).fingerprint);
  expect(station.said).toContain(shown);
  await keep(asked, 'station-first');
  await asked.click('[data-act="trust"]').catch(() => undefined);

  const page = await pageAt(`${hub.screens}/pairing`);
  expect(await page.evaluate(() => window.isSecureContext)).toBe(true);
  await pair(page);
  expect(await hub.devices()).toMatchObject([{ name: 'Old PC at the saw', station: 'table-saw' }]);

  await station.end();
  station = Kiosk.start(data, ['--station', hub.screens]);
  const again = await pageAt(hub.screens);
  await atTheSaw(again);
  expect(station.said).not.toContain('fingerprint');
  expect(existsSync(join(data, 'jobs')), readdirSync(data).join()).toBe(false);
});

test(
  'a station that starts while the shop computer is away shows its kept screens; over a changed key nothing is shown until somebody has compared',
  { tag: '@proof' },
  async () => {
    await pairedStation();
    await station.end();
    await hub.away();
    station = Kiosk.start(data, ['--station', hub.screens]);
    const kept = await pageAt(hub.screens);
    await atTheSaw(kept);
    await expect(kept.locator('[data-message="hub-away"]')).toBeVisible();
    await hub.back();
    await expect(kept.locator('[data-message="hub-away"]')).toBeHidden({ timeout: 30_000 });

    await hub.away();
    rmSync(join(hub.data, 'network-keys.json'));
    await hub.back();
    const warned = await pageAt('http://127.0.0.1:');
    await expect(warned.locator('[data-station="changed"]')).toBeVisible();
    await keep(warned, 'station-changed');
    await warned.click('[data-act="trust"]').catch(() => undefined);
    await atTheSaw(await pageAt(hub.screens));
  },
);
