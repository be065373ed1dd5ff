import AxeBuilder from '@axe-core/playwright';
import { type Browser, chromium, expect, type Page, test } from '@playwright/test';
import { join } from 'node:path';
import config from '../../playwright.config.ts';
import { clippedOn } from './clipped.ts';
import { NetworkHub, PIN } from './network-hub.ts';
import { readQr } from '../main/network/read-qr.ts';
import { errorsOf } from './quiet.ts';
import { scan } from './shop-floor.ts';

let hub: NetworkHub;
/** A browser that trusts this hub's certificate, as a device does on which the shop's was put. */
let trusting: Browser;

test.describe.configure({ mode: 'serial' });
test.beforeAll(async () => {
  hub = await NetworkHub.start();
  const { launchOptions = {} } = config.use ?? {};
  trusting = await chromium.launch({
    ...launchOptions,
    args: [...(launchOptions.args ?? []), `--ignore-certificate-errors-spki-list=${hub.pin()}`],
  });
});
test.afterAll(async () => {
  await trusting.close();
  await hub.stop();
});

async function keep(page: Page, name: string): Promise<void> {
  if (process.env.KEEP_SCREENS !== undefined)
    await page.screenshot({ path: join(import.meta.dirname, 'screens', `${name}.png`), fullPage: true });
}

/** A screen of ours fits its window, or scrolls in itself; the trust page is a page as others are. */
async function clean(page: Page, name: string, fits = true): Promise<void> {
  await keep(page, name);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  if (fits) expect(await clippedOn(page)).toEqual([]);
}

test('the office shows the network, its fingerprint, and what pairs a device', async ({ page }) => {
  const errors = await errorsOf(page.context());
  await page.goto(`${hub.url}/office`);
  for (const key of PIN) await page.keyboard.press(key);
  await page.keyboard.press('Enter');
  await page.click('[data-page="network"]');
  await expect(page.locator('[data-network="on"]')).toBeVisible();
  const shown = (await page.locator('[data-fingerprint]').innerText()).replace(/\s/g, '');
  const trust = await page.context().newPage();
  await trust.goto(hub.trust);
  expect((await trust.locator('code').innerText()).replace(/\s/g, '')).toBe(shown);
  await clean(trust, 'network-trust', false);
  await trust.close();
  await page.click('[data-action="show-addresses"]');
  await expect(page.locator(`[data-address="${hub.screens}"] svg`)).toBeVisible();
  await keep(page, 'network-addresses');
  await page.click('[data-action="show-addresses"]');
  await page.click('[data-action="offer"]');
  await expect(page.locator('[data-code]')).toBeVisible();
  await clean(page, 'network-office');
  // The network's keys are exported only where somebody asks for them, and is told what that means.
  await page.click('[data-page="safety"]');
  await expect(page.locator('[data-action="export"]')).toHaveAttribute('href', '/api/export');
  await page.check('[name="with-network-keys"]');
  // Another may say meanwhile that this machine stood still.
  const alerts = page.getByRole('alert');
  await expect(alerts.filter({ hasText: 'can pretend to be this shop computer' })).toBeVisible();
  await clean(page, 'network-keys');
  const saved = page.waitForEvent('download');
  await page.click('[data-action="export-keys"]');
  expect((await saved).suggestedFilename()).toMatch(/^shoulderline-with-network-keys-[\d-]+\.json$/);
  expect(errors).toEqual([]);
});

test('on a phone the trust page is no wider than the glass, and its fingerprint stands in four lines, as in the office', async ({
  browser,
}) => {
  for (const locale of ['en-US', 'de-DE']) {
    const context = await browser.newContext({
      locale,
      viewport: { width: 360, height: 640 },
      isMobile: true,
      hasTouch: true,
    });
    const page = await context.newPage();
    await page.goto(hub.trust);
    expect(await page.evaluate(() => innerWidth)).toBe(360);
    const heights = await page.locator('code').evaluate((code) => {
      const { height } = code.getBoundingClientRect();
      return [height, Number.parseFloat(getComputedStyle(code).lineHeight)];
    });
    expect((heights[0] ?? 0) / (heights[1] ?? 1)).toBeCloseTo(4, 1);
    await context.close();
  }
});

test('over a certificate that the browser does not trust the page says why, and nobody is paired and nothing marked', async ({
  browser,
}) => {
  const context = await browser.newContext({ ignoreHTTPSErrors: true });
  const page = await context.newPage();
  const { at } = await hub.offer();
  await page.goto(`${hub.screens}/station/milling`);
  await expect(page).toHaveURL(`${hub.screens}/pairing`);
  await expect(page.locator('[data-untrusted]')).toBeVisible();
  await clean(page, 'network-untrusted');
  expect(at).toHaveLength(1);
  // Nor for somebody who asks by hand for what the worker would answer.
  const status = await page.evaluate(async () => {
    const { ask } = (await (await fetch('/api/pairing')).json()) as { ask: string };
    return (await fetch(`/pairing/worker.js?ask=${ask}`)).status;
  });
  expect(status).toBe(404);
  expect(await hub.devices()).toEqual([]);
  await context.close();
});

test('a device is paired by the code, works at its station, eight tabs of it hear every mark, and none once it is revoked', async () => {
  const context = await trusting.newContext({ viewport: { width: 1024, height: 768 }, hasTouch: true });
  const errors = await errorsOf(context);
  const page = await context.newPage();
  const { code } = await hub.offer();
  await page.goto(`${hub.screens}/board`);
  await expect(page.locator('[name="code"]')).toBeVisible();
  await page.fill('[name="code"]', `${code.slice(0, 4)} ${code.slice(4).toLowerCase()}`);
  await page.fill('[name="name"]', 'Tablet at milling');
  await page.click('[data-choose-station="milling"]');
  await clean(page, 'network-pairing');
  await page.click('[data-action="pair"]');
  await expect(page).toHaveURL(`${hub.screens}/station/milling`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  expect(await hub.devices()).toMatchObject([{ name: 'Tablet at milling', station: 'milling' }]);

  const { jobs } = (await hub.ask('GET', '/jobs')) as { jobs: { id: string }[] };
  const plan = (await hub.ask('GET', `/jobs/${jobs[0]?.id ?? ''}`)) as {
    doors: { parts: { code: string }[] }[];
  };
  const part = plan.doors[0]?.parts[0]?.code ?? '';
  const tabs = [page];
  while (tabs.length < 8) tabs.push(await context.newPage());
  await Promise.all(
    tabs.slice(1).map(async (tab) => {
      await tab.goto(`${hub.screens}/board`);
      await expect(tab.locator('[data-door]').first()).toBeVisible();
    }),
  );
  const before = await Promise.all(tabs.slice(1).map((tab) => tab.locator('main').innerText()));
  await page.bringToFront();
  await scan(page, part);
  await expect(page.locator(`main[data-code="${part}"]`)).toHaveAttribute('data-stage', 'mill');
  await page.click('[data-action="done"]');
  await Promise.all(
    tabs
      .slice(1)
      .map((tab, k) => expect(tab.locator('main')).not.toHaveText(before[k] ?? '', { useInnerText: true })),
  );
  const { parts } = (await hub.ask('GET', `/jobs/${jobs[0]?.id ?? ''}/progress`)) as {
    parts: Record<string, unknown>;
  };
  expect(JSON.stringify(parts)).toContain('mill');

  const [device] = await hub.devices();
  await hub.ask('DELETE', `/network/devices/${String(device?.id)}`);
  await Promise.all(tabs.map((tab) => expect(tab).toHaveURL(`${hub.screens}/pairing`)));
  await expect(page.locator('[name="code"]')).toBeVisible();
  expect(errors).toEqual([]);
  await context.close();
});

test('a device is paired by what a camera reads in the office, once, and the token does not stay in the address', async () => {
  const context = await trusting.newContext();
  const page = await context.newPage();
  const { at } = await hub.offer();
  const scanned = (await readQr(at[0]?.pairingSymbol ?? [])) ?? '';
  expect(scanned.startsWith(`${hub.screens}/pairing#`)).toBe(true);
  expect(await readQr(at[0]?.trustSymbol ?? [])).toBe(hub.trust);
  const pair = async () => {
    await page.goto(scanned);
    await expect(page.locator('[data-scanned]')).toBeVisible();
    expect(page.url()).toBe(`${hub.screens}/pairing`);
    await page.fill('[name="name"]', 'Tablet at the bench');
    await page.click('[data-choose-station="bench"]');
    await page.click('[data-action="pair"]');
  };
  await pair();
  await expect(page).toHaveURL(`${hub.screens}/station/bench`);
  await page.goto(`${hub.screens}/pairing`);
  await expect(page.locator('[data-paired]')).toContainText('Tablet at the bench');
  await context.clearCookies();
  await pair();
  await expect(page.getByRole('alert')).toContainText('each code is good for one device');
  expect(await hub.devices()).toHaveLength(1);
  await context.close();
});

test('the board tells who is at which station with what, since when one is away, and whose clock is off; so do the station and the office', async ({
  page,
}) => {
  const errors = await errorsOf(page.context());
  const context = await trusting.newContext({ viewport: { width: 1280, height: 800 }, hasTouch: true });
  await context.addInitScript(() => {
    const { now } = Date;
    Date.now = () => now() + 300_000;
  });
  const device = await context.newPage();
  await device.goto(`${hub.screens}/pairing`);
  await device.fill('[name="code"]', (await hub.offer()).code);
  await device.fill('[name="name"]', 'Tablet at milling');
  await device.click('[data-choose-station="milling"]');
  await device.click('[data-action="pair"]');
  await expect(device.locator('[data-message="clock-off"]')).toContainText('5\u00a0min ahead');
  await scan(device, 'P-ANNA');
  const { jobs } = (await hub.ask('GET', '/jobs')) as { jobs: { id: string }[] };
  const plan = (await hub.ask('GET', `/jobs/${jobs[0]?.id ?? ''}`)) as {
    doors: { parts: { part: string; code: string }[] }[];
  };
  await scan(device, plan.doors[1]?.parts.find(({ part }) => part === 'stile-left')?.code ?? '');
  await expect(device.locator('main[data-stage="mill"]')).toBeVisible();
  const own = await page.context().newPage();
  await own.goto(`${hub.url}/station/bench`);

  await page.goto(`${hub.url}/board`);
  // The shop computer's own stand before those of devices.
  const seen = (station: string) => page.locator(`[data-seen="${station}"]`).first();
  await expect(seen('milling')).toContainText('ANNA, Left stile of BENCH-2');
  await expect(seen('milling')).toContainText('clock 5\u00a0min ahead');
  await expect(seen('bench')).toHaveAttribute('data-here', 'true');
  await clean(page, 'network-stations');
  await own.close();
  await expect(seen('bench')).toContainText('(at the shop computer) away since');
  await page.click('[data-action="stations"]');
  await expect(page.locator('[data-station-seen="milling"]')).toContainText('Mill to size');
  await clean(page, 'network-stations-sheet');
  const listed = await hub.devices();
  expect(listed.at(-1)).toMatchObject({ name: 'Tablet at milling', online: true });
  expect(Math.abs((listed.at(-1)?.clock ?? 0) - 300_000)).toBeLessThan(1000);
  await context.close();
  await expect(page.locator('[data-station-seen="milling"]')).toContainText('away since');
  expect(errors).toEqual([]);
});
