import AxeBuilder from '@axe-core/playwright';
import { type Browser, type BrowserContext, chromium, expect, type Page, test } from '@playwright/test';
import { createHash, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { networkAnswer } from '#core/api/network-api.ts';
import type { Plan } from '#core/plan/plan.ts';
import config from '../../playwright.config.ts';
import { clippedOn } from './clipped.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { PIN } from './network-hub.ts';
import { errorsOf } from './quiet.ts';
import { keep, scan } from './shop-floor.ts';

const KEYS = z.object({ authority: z.object({ certificate: z.string() }) });
const JSON_TYPE = { 'content-type': 'application/json' };

/** One shop whose hub goes from address to address, always by the same port and with the same data. */
class MovingHub {
  readonly data = freshData();
  #hub: HubProcess | null = null;
  #cookie = '';
  screens = '';

  /** Starts it at these addresses of this machine, the first time with a PIN and its network on. */
  async startAt(...hosts: string[]): Promise<void> {
    const first = this.#cookie === '';
    this.#hub = await startHubProcess(this.data, 0, ['--demo'], {
      SHOULDERLINE_NETWORK_HOST: hosts.join(','),
      SHOULDERLINE_NETWORK_PORT: this.screens === '' ? '0' : new URL(this.screens).port,
      SHOULDERLINE_TRUST_PORT: '0',
    });
    const [method, path] = first ? ['PUT', 'pin'] : ['POST', 'session'];
    const opened = await fetch(`${this.#hub.url}/api/${path}`, {
      method,
      headers: JSON_TYPE,
      body: JSON.stringify({ pin: PIN }),
    });
    this.#cookie = (opened.headers.get('set-cookie') ?? '').replace(/;.*/, '');
    if (first) await this.ask('PUT', '/network', { on: true });
    const { addresses } = networkAnswer.parse(await this.ask('GET', '/network'));
    this.screens = addresses[0]?.screens ?? '';
  }

  /** As the office at the hub's own machine. */
  async ask(method: string, path: string, body?: unknown): Promise<unknown> {
    const answer = await fetch(`${this.#hub?.url ?? ''}/api${path}`, {
      method,
      headers: { cookie: this.#cookie, ...(body === undefined ? {} : JSON_TYPE) },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    return answer.json();
  }

  async devices() {
    return networkAnswer.parse(await this.ask('GET', '/network')).devices;
  }

  /** The codes of all marks, in the order in which they were taken. */
  async marked(): Promise<string[]> {
    const gone = new AbortController();
    const answer = await fetch(`${this.#hub?.url ?? ''}/api/events`, {
      headers: { 'last-event-id': '0' },
      signal: gone.signal,
    });
    let told = '';
    const decoder = new TextDecoder();
    for await (const piece of answer.body ?? []) {
      told += decoder.decode(piece);
      if (told.split('event: beat').length > 2) break;
    }
    gone.abort();
    return [...told.matchAll(/event: mark\ndata: (.*)\n/g)].map(
      ([, data = '']) => z.object({ mark: z.object({ code: z.string() }) }).parse(JSON.parse(data)).mark.code,
    );
  }

  /** By what a browser is told to trust this shop: SHA-256 of its authority's public key. */
  pin(): string {
    const text = readFileSync(join(this.data, 'network-keys.json'), 'utf8');
    const { authority } = KEYS.parse(JSON.parse(text));
    const key = new X509Certificate(authority.certificate).publicKey.export({ type: 'spki', format: 'der' });
    return createHash('sha256').update(key).digest('base64');
  }

  async stop(): Promise<void> {
    await this.#hub?.end('SIGTERM');
  }
}

let shop: MovingHub;
let browser: Browser;
let context: BrowserContext;

test.beforeEach(async () => {
  shop = new MovingHub();
});
test.afterEach(async () => {
  await browser.close();
  await shop.stop();
  removeData(shop.data);
});

/** A tablet of that shop, paired at the milling station, whose browser keeps the page. */
async function paired(): Promise<Page> {
  const { launchOptions = {} } = config.use ?? {};
  browser = await chromium.launch({
    ...launchOptions,
    args: [...(launchOptions.args ?? []), `--ignore-certificate-errors-spki-list=${shop.pin()}`],
  });
  context = await browser.newContext({ viewport: { width: 1024, height: 768 }, hasTouch: true });
  const page = await context.newPage();
  const { code } = z.object({ code: z.string() }).parse(await shop.ask('POST', '/network/offers', {}));
  await page.goto(`${shop.screens}/pairing`);
  await page.fill('[name="code"]', code);
  await page.fill('[name="name"]', 'Tablet at milling');
  await page.click('[data-choose-station="milling"]');
  await page.click('[data-action="pair"]');
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await expect.poll(() => page.evaluate(async () => (await caches.match('/')) !== undefined)).toBe(true);
  await expect
    .poll(() => page.evaluate(() => localStorage.getItem('shoulderline.moved')))
    .toContain('"token"');
  // The copy of the jobs is brought up to date a moment after they came.
  await page.waitForTimeout(2500);
  return page;
}

/** Ten blanks that wait at milling, in another order than the plan's. */
async function tenBlanks(): Promise<string[]> {
  const { jobs } = (await shop.ask('GET', '/jobs')) as { jobs: { id: string }[] };
  const plan = (await shop.ask('GET', `/jobs/${jobs[0]?.id ?? ''}`)) as Plan;
  const codes = plan.doors.flatMap(({ parts }) => parts.map(({ code }) => code)).slice(0, 10);
  expect(codes).toHaveLength(10);
  return codes.reverse();
}

/** Mills a blank at the page. */
async function mill(page: Page, code: string): Promise<void> {
  await scan(page, code);
  await expect(page.locator(`main[data-code="${code}"]`)).toHaveAttribute('data-stage', 'mill');
  await page.click('[data-action="done"]');
  await expect(page.locator('main[data-code]')).toHaveCount(0);
}

async function looked(page: Page, name: string): Promise<void> {
  await keep(page, name);
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => [id, nodes.map(({ html }) => html)])).toEqual([]);
  expect(await clippedOn(page)).toEqual([]);
}

/** Types the address where the page asks for it. */
async function typeAddress(page: Page, address: string): Promise<void> {
  await page.click('[data-action="type-address"]');
  for (const key of address) await page.locator(`.keypad [data-key="${key}"]`).click();
  await looked(page, `moved-pad-${address.replaceAll(':', '-')}`);
  await page.click('.keypad [data-key="enter"]');
}

test('ten marks made while the hub is away reach it at its new address, once each and in order, and the page follows as the same device @proof', async () => {
  await shop.startAt('127.0.0.2');
  const page = await paired();
  const errors = await errorsOf(context);
  const before = shop.screens;
  const blanks = await tenBlanks();
  await shop.stop();
  await page.reload();
  await expect(page.locator('[data-message="hub-away"]')).toBeVisible();
  for (const code of blanks) await mill(page, code);
  await expect(page.locator('[data-kept="10"]')).toBeVisible();
  await shop.startAt('127.0.0.3');
  expect(await shop.marked()).toEqual([]);
  await expect(page.locator('[data-moved="asks"]')).toBeVisible({ timeout: 40_000 });
  expect(page.url()).toBe(`${before}/station/milling`);
  await looked(page, 'moved-asks');

  // What is elsewhere gets nothing: neither a form that is none, nor what nobody is at.
  await typeAddress(page, '8.8.8.8');
  await expect(page.locator('#typed-told')).toContainText('not an address');
  await page.keyboard.press('Escape');
  await typeAddress(page, '127.0.0.9');
  await expect(page.locator('[data-moved="asks"]')).toContainText('127.0.0.9');
  await expect(page.locator('[data-moved="asks"]')).toContainText('nothing answers');
  await expect(page.locator('[data-kept="10"]')).toBeVisible();

  await typeAddress(page, '127.0.0.3');
  await expect(page).toHaveURL(`${shop.screens}/station/milling`, { timeout: 30_000 });
  expect(shop.screens).toBe(before.replace('127.0.0.2', '127.0.0.3'));
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await expect(page.locator('[data-message="hub-away"]')).toHaveCount(0);
  expect(await shop.marked()).toEqual(blanks);
  expect(await shop.devices()).toMatchObject([{ name: 'Tablet at milling', station: 'milling' }]);
  expect(errors).toEqual([]);

  // It works there as it did, over another page load too, and nothing is sent a second time.
  await page.reload();
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  expect(await shop.marked()).toEqual(blanks);
});

test('a page finds its hub by itself at another address that it was told of, from two tabs alike @proof', async () => {
  await shop.startAt('127.0.0.2', '127.0.0.3');
  const page = await paired();
  const [first = '', second = ''] = await tenBlanks();
  const board = await context.newPage();
  await board.goto(`${shop.screens}/board`);
  await expect(board.locator('[data-door]').first()).toBeVisible();
  await page.bringToFront();
  await shop.stop();
  await expect(page.locator('[data-message="hub-away"]')).toBeVisible();
  await mill(page, first);
  await shop.startAt('127.0.0.3');
  // Somebody works at a set-up: what is kept is sent, and the page stays.
  await scan(page, second);
  await expect(page.locator(`main[data-code="${second}"]`)).toBeVisible();
  await expect.poll(() => shop.marked(), { timeout: 60_000 }).toEqual([first]);
  await expect(board).toHaveURL(`${shop.screens}/board`, { timeout: 30_000 });
  await expect(page).toHaveURL(`${shop.screens.replace('127.0.0.3', '127.0.0.2')}/station/milling`);
  await page.click('[data-action="done"]');
  await expect(page).toHaveURL(`${shop.screens}/station/milling`, { timeout: 60_000 });
  expect(await shop.marked()).toEqual([first, second]);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await expect(board.locator('[data-door]').first()).toBeVisible();
  expect(await shop.devices()).toHaveLength(1);
});

test('a page whose device was revoked meanwhile keeps its marks and says so; a hub that the browser does not trust gets nothing @proof', async () => {
  await shop.startAt('127.0.0.2');
  const page = await paired();
  const [code = ''] = await tenBlanks();
  await shop.stop();
  await expect(page.locator('[data-message="hub-away"]')).toBeVisible();
  await mill(page, code);
  await shop.startAt('127.0.0.3');
  const [device] = await shop.devices();
  await shop.ask('DELETE', `/network/devices/${String(device?.id)}`);
  const other = new MovingHub();
  other.screens = shop.screens;
  try {
    await other.startAt('127.0.0.4');
    expect(other.screens).toBe(shop.screens.replace('127.0.0.3', '127.0.0.4'));
    await expect(page.locator('[data-moved="asks"]')).toBeVisible({ timeout: 40_000 });
    await typeAddress(page, '127.0.0.4');
    await expect(page.locator('[data-moved="asks"]')).toContainText('can trust');
    await typeAddress(page, '127.0.0.3');
    await expect(page.locator('[data-moved="asks"]')).toContainText('was revoked');
    await looked(page, 'moved-revoked');
    await expect(page.locator('[data-kept="1"]')).toBeVisible();
    expect(await shop.marked()).toEqual([]);
    expect(page.url()).toContain('127.0.0.2');
  } finally {
    await other.stop();
    removeData(other.data);
  }
});
