import { expect, type Page, test } from '@playwright/test';
import { clippedOn } from './clipped.ts';
import { demoHub } from './demo-hub.ts';
import { floorScreens, type Screen, workedUntilFitting } from './floor-screens.ts';
import { foreignTypeOn } from './foreign-type.ts';
import { faultsOf } from './shop-floor.ts';
import { underlinesOn } from './underlines.ts';

const SIZES = [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
];
const PIN = '4711';
const hub = demoHub();
/** Each walk gives a door another width, so that each finds parts that were cut otherwise. */
let walks = 0;

test.describe.configure({ mode: 'serial', timeout: 300_000 });
test.beforeAll(() => workedUntilFitting(hub));

/** Asks the hub something with the page's own session. */
async function ask(page: Page, method: string, path: string, body?: unknown): Promise<void> {
  const status = await page.evaluate(
    async ([verb, address, json]) =>
      (
        await fetch(`/api${address}`, {
          method: verb,
          ...(json === undefined ? {} : { body: json, headers: { 'content-type': 'application/json' } }),
        })
      ).status,
    [method, path, body === undefined ? undefined : JSON.stringify(body)] as const,
  );
  expect(status).toBeLessThan(300);
}
async function office(page: Page, id: string): Promise<void> {
  await page.goto(`${hub.url}/office`);
  await page.click(`[data-page="${id}"]`);
}

const SCREENS: readonly Screen[] = [
  ...floorScreens(hub),
  [
    'office list',
    async (page) => {
      await office(page, 'jobs');
      await expect(page.locator('[data-action="show-job"]')).toBeVisible();
    },
  ],
  [
    'printing',
    async (page) => {
      await page.click('[data-action="show-job"]');
      await expect(
        page.locator('[data-action="print"], [data-action="print-stickers"]').first(),
      ).toBeVisible();
    },
  ],
  [
    'sizes as they came out, of a part',
    async (page) => {
      await page.click('[data-action="show-sizes"]');
      await page.selectOption('[name="measured-door"]', 'BENCH-1');
      await page.selectOption('[name="measured-part"]', 'stile-left');
      await expect(page.locator('[name="measured-width"]')).toBeVisible();
    },
  ],
  [
    'job form',
    async (page) => {
      await page.click('[data-action="edit-job"]');
      await expect(page.locator('[data-action="save-job"]')).toBeVisible();
    },
  ],
  [
    'job form with faults and explanations',
    async (page) => {
      await page.click('[data-action="explain-form"]');
      await page.locator('[data-action="add-rail"]').first().click();
      await page.locator('[name="arched"]').first().check();
      await page.locator('[name="rise"]').first().fill('1,5');
      await page.click('[data-action="save-job"]');
      await expect(page.locator('[data-told="rise"]')).toBeVisible();
    },
  ],
  [
    'job form with the calendar of its due date',
    async (page) => {
      await page.click('[name="due"]');
      await expect(page.locator('[data-calendar]')).toBeVisible();
    },
  ],
  [
    'question before units are changed',
    async (page) => {
      await page.selectOption('[name="units"]', 'mm');
      await expect(page.locator('[data-question]')).toBeVisible();
    },
  ],
  [
    'question before cut parts fit no more',
    async (page) => {
      await office(page, 'jobs');
      await page.click('[data-action="edit-job"]');
      const marks = page.locator('[name="mark"]');
      await expect(marks.first()).toBeVisible();
      const all = await marks.evaluateAll((inputs) => inputs.map((each) => (each as HTMLInputElement).value));
      await page.locator('[data-action="more-for-door"]').first().click();
      await page
        .locator('[name="width"]')
        .nth(all.indexOf('LOCKER'))
        .fill(String(15 + (walks += 1)));
      await marks.nth(all.indexOf('ARCH-L')).fill('ARCH');
      await page.click('[data-action="save-job"]');
      await expect(page.locator('[data-question] [data-lost]')).toBeVisible();
    },
  ],
  [
    'office list with doors that were cut otherwise',
    async (page) => {
      await page.click('[data-answer="stay"]');
      await page.locator('[name="mark"]').nth(2).fill('ARCH-L');
      await page.click('[data-action="save-job"]');
      await page.click('[data-answer="save"]');
      await expect(page.locator('main > [data-cut-otherwise]')).toBeVisible();
    },
  ],
  [
    'board with a door that was cut otherwise',
    async (page) => {
      await page.goto(`${hub.url}/board`);
      await expect(page.locator('tr [data-cut-otherwise]').first()).toBeVisible();
    },
  ],
  [
    'sheet of a door that was cut otherwise',
    async (page) => {
      await page.locator('[data-door="LOCKER-1"]').getByRole('button', { name: 'LOCKER-1' }).press('Enter');
      await expect(page.locator('[data-door-sheet] [data-cut-otherwise]').first()).toBeVisible();
    },
  ],
  [
    'sheet of a part that was cut otherwise',
    async (page) => {
      await page.locator('[data-door-sheet] [data-part="rail-top"]').click();
      await expect(page.locator('[data-part-sheet] [data-cut-otherwise]')).toBeVisible();
    },
  ],
  [
    'shop page',
    async (page) => {
      await office(page, 'shop');
      await expect(page.locator('[data-action="save-shop"]')).toBeVisible();
    },
  ],
  [
    'backups and PIN',
    async (page) => {
      await office(page, 'safety');
      await expect(page.locator('[data-action="back-up"]')).toBeVisible();
    },
  ],
  [
    'network',
    async (page) => {
      await office(page, 'network');
      await expect(page.locator('[data-network="off"]')).toBeVisible();
    },
  ],
  [
    'PIN pad',
    async (page) => {
      await ask(page, 'PUT', '/pin', { pin: PIN });
      await ask(page, 'DELETE', '/session');
      await page.goto(`${hub.url}/office`);
      await expect(page.locator('[data-pin-pad]')).toBeVisible();
    },
  ],
];

/** Shows every screen once, at each size, and gathers what a look at it finds. */
async function walk(
  page: Page,
  language: string,
  look: (page: Page, width: number) => Promise<string[]>,
): Promise<string[]> {
  const found: string[] = [];
  await page.goto(`${hub.url}/station?language=${language}`);
  for (const [name, show] of SCREENS) {
    await page.setViewportSize({ width: 1280, height: 800 });
    await show(page);
    for (const size of SIZES) {
      await page.setViewportSize(size);
      await page.evaluate(
        () => new Promise((painted) => requestAnimationFrame(() => setTimeout(painted, 30))),
      );
      const faults = await look(page, size.width);
      found.push(...faults.map((fault) => `${name} at ${size.width}: ${fault}`));
      if (process.env.KEEP_WALK !== undefined)
        await page.screenshot({ path: `${process.env.KEEP_WALK}/${name}-${language}-${size.width}.png` });
    }
  }
  await ask(page, 'POST', '/session', { pin: PIN });
  await ask(page, 'PUT', '/pin', { pin: null });
  return found;
}

/** What a person could not read, hit or reach on a screen, and what axe finds there, which it needs to be asked once. */
const look = async (page: Page, width: number) => [
  ...(await clippedOn(page)),
  ...(await underlinesOn(page)),
  ...(await faultsOf(page, width === 1280)),
  ...(width === 1280 ? await foreignTypeOn(page) : []),
];

test('in a language that is longer by two fifths no screen cuts a word, lets an underline touch a rule, scrolls, has a target under 64 px or a letter of another typeface, at either size, and axe finds nothing', async ({
  page,
}) => {
  const found = await walk(page, 'pseudo', look);
  expect(await page.evaluate(() => document.body.textContent)).toMatch(/[åëïøü]/);
  expect(found).toEqual([]);
});

test('in plain English neither', { tag: '@proof' }, async ({ page }) => {
  expect(await walk(page, 'en', look)).toEqual([]);
});
