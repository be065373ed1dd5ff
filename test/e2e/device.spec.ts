import AxeBuilder from '@axe-core/playwright';
import { type Browser, type BrowserContext, chromium, expect, type Page, test } from '@playwright/test';
import { rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import config from '../../playwright.config.ts';
import type { Plan, PlanPart } from '#core/plan/plan.ts';
import { readQr } from '../main/network/read-qr.ts';
import { cameraPicture } from './camera-picture.ts';
import { pngPages } from '../labels/read-pdf.ts';
import { clippedOn } from './clipped.ts';
import { NetworkHub } from './network-hub.ts';
import { errorsOf } from './quiet.ts';
import { keep, onlyPlan, scan } from './shop-floor.ts';

/** A telephone as browsers see it. */
const PHONE = {
  viewport: { width: 360, height: 640 },
  screen: { width: 360, height: 640 },
  deviceScaleFactor: 3,
  isMobile: true,
  hasTouch: true,
};
const TABLET = { width: 768, height: 1024 };
const film = join(tmpdir(), `shoulderline-phone-${process.pid}.y4m`);
let hub: NetworkHub;
let plan: Plan;
/** The part whose sticker the camera sees. */
let part: PlanPart;
/** A browser that trusts the hub, and whose camera is held before that sticker. */
let browser: Browser;

test.beforeAll(async () => {
  hub = await NetworkHub.start();
  plan = await onlyPlan(hub);
  const [first] = plan.doors[0]?.parts ?? [];
  if (first === undefined) throw new Error('the demo has a door');
  part = first;
  const pdf = await fetch(`${hub.url}/api/jobs/${plan.id}/stickers.pdf?stock=roll-3x1&codes=${part.code}`);
  const [sticker] = await pngPages(new Uint8Array(await pdf.arrayBuffer()), 203);
  if (sticker === undefined) throw new Error('a sticker was printed');
  writeFileSync(film, await cameraPicture(sticker, { x: 0, y: 0, width: 609, height: 203 }));
  const { launchOptions = {} } = config.use ?? {};
  browser = await chromium.launch({
    ...launchOptions,
    args: [
      ...(launchOptions.args ?? []),
      `--ignore-certificate-errors-spki-list=${hub.pin()}`,
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${film}`,
    ],
  });
});
test.afterAll(async () => {
  await browser.close();
  await hub.stop();
  rmSync(film, { force: true });
});

/** What of a page does not fit or is not for everybody: cut words, targets under 48 px, what axe finds, a page wider than its window. */
async function faultsOn(page: Page): Promise<unknown[]> {
  const { violations } = await new AxeBuilder({ page }).setLegacyMode().analyze();
  const small = await page.evaluate(() => [
    ...(document.documentElement.scrollWidth > innerWidth ? ['wider than the window'] : []),
    ...[...document.querySelectorAll('button, input, a[href]')]
      .map((each) => [each.outerHTML.slice(0, 80), each.getBoundingClientRect()] as const)
      .filter(([, { width, height }]) => width > 0 && (width < 48 || height < 48))
      .map(([html]) => html),
  ]);
  return [...(await clippedOn(page)), ...small, ...violations.map(({ id, nodes }) => [id, nodes[0]?.html])];
}

/** Pairs a device by what its camera reads in the office. */
async function paired(context: BrowserContext, station: string, name = 'Phone'): Promise<Page> {
  const page = await context.newPage();
  const { at } = await hub.offer();
  await page.goto((await readQr(at[0]?.pairingSymbol ?? [])) ?? '');
  await page.fill('[name="name"]', name);
  await page.tap(`[data-choose-station="${station}"]`);
  await page.tap('[data-action="pair"]');
  await expect(page).toHaveURL(`${hub.screens}/station/${station}`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  return page;
}

/** How often a stage of a part was marked done, by the hub's own log. */
async function doneAt(code: string, stage: string): Promise<number> {
  const stream = await fetch(`${hub.url}/api/events`, { headers: { 'last-event-id': '0' } });
  const reader = stream.body?.getReader();
  let text = '';
  const decoder = new TextDecoder();
  // It greets with a beat; the next comes after all that was missed.
  while (reader !== undefined && text.split('event: beat').length < 3) {
    const { done, value } = await reader.read();
    if (done) break;
    text += decoder.decode(value, { stream: true });
  }
  await reader?.cancel();
  return text
    .split('\n')
    .filter((line) => line.startsWith('data:') && line.includes(code) && line.includes(`"${stage}"`)).length;
}

const done = (page: Page) => page.locator('[data-action="done"]').tap();

test('a phone is paired by the picture, scans with its camera, and its mark is at the hub', async () => {
  const context = await browser.newContext(PHONE);
  const errors = await errorsOf(context);
  const page = await paired(context, 'milling');
  await page.tap('[data-action="camera"]');
  await expect(page.locator(`main[data-code="${part.code}"]`)).toHaveAttribute('data-stage', 'mill', {
    timeout: 20_000,
  });
  await keep(page, 'device-setup-360');
  await done(page);
  await expect.poll(() => doneAt(part.code, 'mill')).toBe(1);
  expect(errors).toEqual([]);
  await context.close();
});

test(
  'what a phone marks while the hub is away is at the hub once when it is back',
  { tag: '@proof' },
  async () => {
    const context = await browser.newContext(PHONE);
    const errors = await errorsOf(context);
    const page = await paired(context, 'milling');
    const other = plan.doors[0]?.parts[1];
    if (other === undefined) throw new Error('a door has two stiles');
    hub.hold(true);
    try {
      await scan(page, other.code);
      await done(page);
      const away = page.locator('[data-message="hub-away"]');
      await expect(away).toHaveAttribute('data-kept', '1');
      await keep(page, 'device-away-360');
      hub.hold(false);
      await expect.poll(() => doneAt(other.code, 'mill'), { timeout: 15_000 }).toBe(1);
      await expect(away).toHaveCount(0);
      await page.reload();
      await expect(page.locator('[data-loaded="true"]')).toBeVisible();
      expect(await doneAt(other.code, 'mill')).toBe(1);
    } finally {
      hub.hold(false);
    }
    expect(errors).toEqual([]);
    await context.close();
  },
);

test('a device is not offered to leave the full screen, which only the shop computer can', async ({
  page: here,
}) => {
  const context = await browser.newContext(PHONE);
  const page = await paired(context, 'bench');
  const station = '[data-choose-station="milling"]';
  await page.goto(`${hub.screens}/station`);
  await expect(page.locator(station)).toBeVisible();
  await expect(page.locator('[data-action="card"]')).toBeVisible();
  await expect(page.locator('[data-action="leave"]')).toHaveCount(0);
  await context.close();
  await here.goto(`${hub.url}/station`);
  await expect(here.locator(station)).toBeVisible();
  await expect(here.locator('[data-action="leave"]')).toBeVisible();
});

test('a paired device can put the screens among its programs, and nobody else gets what it needs for that', async () => {
  const context = await browser.newContext(PHONE);
  const page = await paired(context, 'bench');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  // Without its cookie a device would be refused.
  await expect(page.locator('link[rel="manifest"]')).toHaveAttribute('crossorigin', 'use-credentials');
  const browserSide = await context.newCDPSession(page);
  const told = await browserSide.send('Page.getAppManifest');
  expect(told.errors).toEqual([]);
  expect(new URL(told.url).origin).toBe(hub.screens);
  const { installabilityErrors } = await browserSide.send('Page.getInstallabilityErrors');
  // A window of a test's own is always private, which no program can be put in from.
  expect(installabilityErrors.map(({ errorId }) => errorId).filter((id) => id !== 'in-incognito')).toEqual(
    [],
  );
  const { name, display, start_url, icons } = JSON.parse(told.data ?? '{}') as Record<string, unknown>;
  expect([name, display, start_url]).toEqual(['Shoulderline', 'fullscreen', '/']);
  const sizes = await page.evaluate(
    (all) =>
      Promise.all(
        all.map(async ({ src }) => {
          const image = new Image();
          image.src = src;
          await image.decode();
          return `${image.naturalWidth}x${image.naturalHeight}`;
        }),
      ),
    (icons as { src: string; sizes: string }[]).filter((each) => each.sizes !== 'any'),
  );
  expect(sizes).toEqual(['192x192', '512x512', '512x512']);
  // Kept with the rest: the page of a hub that is away asks for it too.
  expect(await page.evaluate((url) => caches.match(url).then((kept) => kept !== undefined), told.url)).toBe(
    true,
  );
  await context.close();
  const stranger = await (await browser.newContext()).newPage();
  await stranger.goto(`${hub.screens}/pairing`);
  expect(await stranger.evaluate(async (url) => (await fetch(url)).status, told.url)).toBe(401);
  await stranger.context().close();
});

test('the screen is kept awake while a set-up is shown, and no longer', { tag: '@proof' }, async () => {
  const context = await browser.newContext(PHONE);
  await context.addInitScript(() => {
    const held = ((globalThis as { held?: Set<unknown> }).held = new Set());
    const { wakeLock } = navigator;
    const ask = wakeLock.request.bind(wakeLock);
    wakeLock.request = async (kind) => {
      const lock = await ask(kind);
      held.add(lock);
      lock.addEventListener('release', () => held.delete(lock));
      return lock;
    };
  });
  const page = await paired(context, 'milling');
  const held = () => page.evaluate(() => (globalThis as { held?: Set<unknown> }).held?.size);
  expect(await held()).toBe(0);
  await scan(page, plan.doors[0]?.parts[2]?.code ?? '');
  await expect(page.locator('main[data-stage]')).toBeVisible();
  await expect.poll(held).toBe(1);
  await page.locator('[data-action="close"]').tap();
  await expect.poll(held).toBe(0);
  await context.close();
});

// No gesture that a test can make enlarges a page in this browser, not even one that lets it: what a page allows is looked at.
test('two taps in a row are let to make no page larger, and two fingers are', { tag: '@proof' }, async () => {
  const context = await browser.newContext({ ...PHONE, ignoreHTTPSErrors: true });
  const page = await context.newPage();
  await page.goto(`${hub.screens}/pairing`);
  await expect(page.locator('[data-choose-station="milling"]')).toBeVisible();
  // What stands in another is let no more than that: the outermost say it of all.
  const allowed = await page.evaluate(() =>
    [document.documentElement, document.body].map((each) => getComputedStyle(each).touchAction),
  );
  expect(allowed).toEqual(['manipulation', 'manipulation']);
  await context.close();
});

for (const size of [PHONE.viewport, TABLET])
  test(
    `a device of ${size.width} × ${size.height} is paired by a page that fits, and by a card its numbers fit it`,
    { tag: '@proof' },
    async ({ browser: distrusting }) => {
      const device = { ...PHONE, viewport: size, screen: size, deviceScaleFactor: 2 };
      const stranger = await distrusting.newContext({ ...device, ignoreHTTPSErrors: true });
      const refused = await stranger.newPage();
      await refused.goto(`${hub.screens}/pairing`);
      await expect(refused.locator('[data-untrusted]')).toBeVisible();
      await keep(refused, `device-untrusted-${size.width}`);
      expect(await faultsOn(refused)).toEqual([]);
      await stranger.close();

      const context = await browser.newContext(device);
      const errors = await errorsOf(context);
      const page = await context.newPage();
      await page.goto(`${hub.screens}/pairing`);
      await expect(page.locator('[name="code"]')).toBeVisible();
      await keep(page, `device-pairing-${size.width}`);
      expect(await faultsOn(page)).toEqual([]);
      await page.fill('[name="code"]', '0000 0000');
      await page.fill('[name="name"]', 'Phone');
      await page.tap('[data-choose-station="fitting"]');
      await page.tap('[data-action="pair"]');
      await expect(page.getByRole('alert')).toBeInViewport();
      await keep(page, `device-pairing-wrong-${size.width}`);
      expect(await faultsOn(page)).toEqual([]);
      await page.close();

      const station = await paired(context, 'fitting');
      await keep(station, `device-offer-${size.width}`);
      await station.tap('[data-card-offer] [data-action="card"]');
      const card = station.locator('[data-card]');
      await expect(card).toBeVisible();
      await keep(station, `device-card-${size.width}`);
      expect(await faultsOn(station)).toEqual([]);
      const before = Number(await card.getAttribute('width'));
      for (let k = 0; k < 5; k += 1) await station.tap('[data-action="wider"]');
      await station.tap('[data-action="narrower"]');
      expect(await card.getAttribute('width')).toBe(String(before + 4));
      await station.locator('[name="card-width"]').fill('300');
      const box = await card.boundingBox();
      const upright = (await card.getAttribute('data-card')) === 'upright';
      expect(box?.width).toBeCloseTo(300, 0);
      expect((box?.height ?? 0) / (box?.width ?? 1)).toBeCloseTo(upright ? 85.6 / 53.98 : 53.98 / 85.6, 2);
      await station.tap('[data-action="card-fits"]');
      await expect(card).toHaveCount(0);
      await expect(station.locator('[data-card-offer]')).toHaveCount(0);
      // Across the glass there are as many millimetres as the card says, however it is turned; it can be measured again.
      await station.goto(`${hub.screens}/station`);
      const side = upright ? 53.98 : 85.6;
      const told = (across: number) => String(Math.round((across * side) / 300));
      await expect(station.locator('[name="screen-width"]')).toHaveValue(told(size.width));
      await station.setViewportSize({ width: size.height, height: size.width });
      await station.reload();
      await expect(station.locator('[name="screen-width"]')).toHaveValue(told(size.height));
      await station.locator('[data-action="card"]').tap();
      await expect(card).toBeVisible();
      await keep(station, `device-card-${size.height}`);
      expect(await faultsOn(station)).toEqual([]);
      await station.setViewportSize(size);
      await station.goto(`${hub.screens}/station?language=pseudo`);
      await station.tap('[data-action="card"]');
      await expect(card).toBeVisible();
      expect(await faultsOn(station)).toEqual([]);
      expect(errors).toEqual([]);
      await context.close();
    },
  );

test(
  'who does not want to measure is not asked again, and a scan goes past the question',
  { tag: '@proof' },
  async () => {
    const context = await browser.newContext(PHONE);
    const page = await paired(context, 'milling');
    await page.tap('[data-card-offer] [data-action="card"]');
    await expect(page.locator('[data-card]')).toBeVisible();
    const code = plan.doors[0]?.parts[3]?.code ?? '';
    await scan(page, code);
    await expect(page.locator(`main[data-code="${code}"]`)).toBeVisible();
    await expect(page.locator('[data-card]')).toHaveCount(0);
    await page.locator('[data-action="close"]').tap();
    await page.locator('[data-action="no-card"]').tap();
    await expect(page.locator('[data-card-offer]')).toHaveCount(0);
    await page.reload();
    await expect(page.locator('[data-loaded="true"]')).toBeVisible();
    await expect(page.locator('[data-card-offer]')).toHaveCount(0);
    await context.close();
  },
);
