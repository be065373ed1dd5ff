import { expect, type Page, test } from '@playwright/test';
import { demoHub } from './demo-hub.ts';
import { floorScreens, type Screen, workedUntilFitting } from './floor-screens.ts';
import { HAND_SIZES, handFaults } from './hand-faults.ts';
import { axeFaults, post, scan } from './shop-floor.ts';

const hub = demoHub();

test.describe.configure({ timeout: 600_000 });
test.use({ viewport: HAND_SIZES[0] });
test.beforeAll(() => workedUntilFitting(hub));

const code = (door: string, part: string) => hub.part(door, part).code;
const painted = (page: Page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 30))));

/** What a look at a screen finds at some sizes. */
async function lookAt(
  page: Page,
  name: string,
  sizes: readonly (typeof HAND_SIZES)[number][],
): Promise<string[]> {
  const found: string[] = [];
  for (const size of sizes) {
    await page.setViewportSize(size);
    await painted(page);
    const faults = await handFaults(page);
    found.push(...faults.map((fault) => `${name} at ${size.width} × ${size.height}: ${fault}`));
    if (process.env.KEEP_WALK !== undefined)
      await page.screenshot({ path: `${process.env.KEEP_WALK}/hand-${name}-${size.width}.png` });
  }
  return found;
}

test('on a phone and on a tablet that stands upright the queue, a setup, trimming and the board cut no word, scroll nothing sideways, have every target large enough and Done in view, and axe finds nothing', async ({
  page,
}) => {
  const [phone, tablet] = [HAND_SIZES[0], HAND_SIZES[4]];
  const found: string[] = [];
  const shown: readonly Screen[] = [
    ['queue', (at) => hub.open(at, 'milling')],
    [
      'mortise',
      async (at) => {
        await hub.open(at, 'mortiser');
        await scan(at, code('LOCKER-1', 'stile-left'));
        await expect(at.locator('main[data-stage="mortise"]')).toBeVisible();
      },
    ],
    [
      'trim',
      async (at) => {
        await hub.open(at, 'fitting');
        await scan(at, code('ARCH-R-1', 'stile-left'));
        await expect(at.locator('main[data-stage="trim"]')).toBeVisible();
      },
    ],
    [
      'board',
      async (at) => {
        await at.goto(`${hub.url}/board`);
        await expect(at.locator('[data-door="BENCH-3"]')).toBeVisible();
      },
    ],
  ];
  for (const [name, show] of shown) {
    await page.setViewportSize(phone);
    await show(page);
    found.push(...(await lookAt(page, name, [tablet, phone])), ...(await axeFaults(page)));
  }
  expect(found).toEqual([]);
});

test('a setup is worked by touch alone on a phone: its next place begins at its top, Done stays where it is, and what was marked is undone at the foot', async ({
  page,
}) => {
  await hub.open(page, 'mortiser');
  await page.tap('[data-action="type"]');
  for (const key of code('LOCKER-1', 'stile-left')) await page.tap(`[data-key="${key}"]`);
  await page.tap('[data-key="enter"]');
  const work = page.locator('main .work');
  const done = page.locator('[data-action="done"]');
  const at = await done.boundingBox();
  await work.evaluate((box) => box.scrollTo({ top: box.scrollHeight }));
  expect(await work.evaluate((box) => box.scrollTop)).toBeGreaterThan(100);
  expect(await done.boundingBox()).toEqual(at);
  const places =
    hub.part('LOCKER-1', 'stile-left').stages.find(({ stage }) => stage === 'mortise')?.places ?? [];
  expect(places.length).toBeGreaterThan(1);
  for (const place of places.slice(1)) {
    await page.tap('[data-action="done"]');
    await expect(page.locator(`[data-place-choice="${place.at}"][aria-pressed="true"]`)).toBeInViewport();
    expect(await work.evaluate((box) => box.scrollTop)).toBe(0);
    await work.evaluate((box) => box.scrollTo({ top: box.scrollHeight }));
    await expect(page.locator('[data-action="done"]:not([aria-disabled="true"])')).toBeVisible();
  }
  await page.tap('[data-action="done"]');
  const undo = page.locator('[data-action="undo"]');
  await expect(undo).toBeInViewport({ ratio: 1 });
  expect((await undo.boundingBox())?.y).toBeGreaterThan(320);
  await undo.tap();
  await expect(page.locator('[data-message="undone"]')).toBeVisible();
  // What a station leads to beside a code is one tap further away.
  await expect(page.locator('[data-action="find"]')).toBeHidden();
  await page.tap('[data-action="ways"]');
  await page.tap('[data-action="find"]');
  await expect(page.locator('[data-find-door="KEYS-1"]')).toBeVisible();
});

/** Screens that the walk of big ones has not; parts of this door are marked and given up. */
function moreScreens(door: string): readonly Screen[] {
  const mill = async (page: Page) => {
    await hub.open(page, 'milling');
    await scan(page, code(door, 'rail-top'));
    await expect(page.locator('main[data-stage="mill"]')).toBeVisible();
  };
  return [
    [
      'steps',
      async (page) => {
        await hub.open(page, 'mortiser');
        await scan(page, code('LOCKER-1', 'stile-left'));
        await page.click('[data-action="how"]');
        await expect(page.locator('[data-how]')).toBeVisible();
      },
    ],
    [
      'cautions',
      async (page) => {
        await page.click('[data-action="close-sheet"]');
        await page.click('[data-action="cautions"]');
        await expect(page.locator('[data-cautions]')).toBeVisible();
      },
    ],
    [
      'mistyped code over a setup',
      async (page) => {
        await page.click('[data-action="close-sheet"]');
        await scan(page, 'AAAAAAAAAA');
        await expect(page.locator('header [data-message]')).toBeVisible();
      },
    ],
    [
      'badge taken',
      async (page) => {
        await hub.open(page, 'milling');
        await scan(page, 'P-WREN');
        await expect(page.locator('[data-message="badge"]')).toBeVisible();
      },
    ],
    [
      'whole queue',
      async (page) => {
        await hub.open(page, 'milling');
        await page.locator('[data-action="show-group"], [data-action="show-queue"]').first().click();
        await expect(page.locator('[data-action="close-sheet"]')).toBeVisible();
      },
    ],
    [
      'marked, with its undo',
      async (page) => {
        await mill(page);
        await page.click('[data-action="done"]');
        await expect(page.locator('[data-action="undo"]')).toBeVisible();
      },
    ],
    [
      'replaced',
      async (page) => {
        await page.click('[data-action="undo"]');
        await mill(page);
        await page.click('[data-action="spoil"]');
        await page.click('[data-reason="split"]');
        await page.click('[data-action="give-up"]');
        await expect(page.locator('[data-message="replacement"]')).toBeVisible();
      },
    ],
    [
      'hub away',
      async (page) => {
        await hub.open(page, 'milling');
        await scan(page, code(door, 'rail-bottom'));
        await expect(page.locator('main[data-stage="mill"]')).toBeVisible();
        await hub.end('SIGTERM');
        await page.click('[data-action="done"]');
        await expect(page.locator('[data-message="hub-away"][data-kept="1"]')).toBeVisible();
      },
    ],
    [
      'kept mark that came back',
      async (page) => {
        await page.goto('about:blank');
        await hub.again();
        expect((await post(hub, code(door, 'rail-bottom'), 'milling', 'mill')).status).toBe(200);
        await page.goto(`${hub.url}/station/milling`);
        await expect(page.locator('[data-decide]')).toBeVisible();
      },
    ],
  ];
}

for (const [k, language] of ['en', 'de', 'pseudo'].entries())
  test(
    `in ${language} no screen of the stations, of fitting and of the board has a fault at any size of a phone or a tablet`,
    { tag: '@proof' },
    async ({ page }) => {
      const found: string[] = [];
      await page.goto(`${hub.url}/station?language=${language}`);
      for (const [name, show] of [...floorScreens(hub), ...moreScreens(`BENCH-${k + 1}`)]) {
        await page.setViewportSize({ width: 1280, height: 800 });
        await show(page);
        found.push(...(await lookAt(page, `${name} ${language}`, HAND_SIZES)));
      }
      expect(found).toEqual([]);
    },
  );
