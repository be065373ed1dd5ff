import { expect, test } from '@playwright/test';
import type { Plan } from '#core/plan/plan.ts';
import { cautionText, gravestOf } from '#core/telling/cautions-of.ts';
import { demoHub } from './demo-hub.ts';
import { addedPlan, addJob, doneUntil, faultsOf, keep, partOf, scan } from './shop-floor.ts';

const hub = demoHub();

test('the choice of station is remembered', async ({ page }) => {
  await page.goto(hub.url);
  await page.click('[data-choose-station="bench"]');
  await expect(page).toHaveURL(/\/station\/bench$/);
  await page.goto(hub.url);
  await expect(page.getByRole('heading', { name: 'Bench' })).toBeVisible();
});

test('wrong station, too early and a bad code each say so and what to do; a bad code leaves the screen as it is', async ({
  page,
}) => {
  const stile = hub.part('BENCH-1', 'stile-left');
  await hub.open(page, 'band-saw');
  await scan(page, stile.code);
  await expect(page.locator('[data-message="wrong-station"]')).toContainText('milling');
  await hub.open(page, 'mortiser');
  await scan(page, stile.code);
  await expect(page.locator('[data-message="stage-not-reached"]')).toContainText('Mill to size');
  await keep(page, 'message');
  await hub.open(page, 'milling');
  await scan(page, stile.code);
  await expect(page.locator(`[data-code="${stile.code}"]`)).toBeVisible();
  await scan(page, 'AAAAAAAAAA');
  await expect(page.locator('[data-message="bad-check"]')).toBeVisible();
  await expect(page.locator(`[data-code="${stile.code}"]`)).toBeVisible();
});

test('a second scan marks done, but not within 800 ms of the setup; the mark can be taken back', async ({
  page,
}) => {
  const stile = hub.part('BENCH-2', 'stile-left');
  await hub.open(page, 'milling');
  await scan(page, stile.code);
  const setup = page.locator(`[data-code="${stile.code}"]`);
  await expect(setup).toBeVisible();
  await scan(page, stile.code);
  await expect(setup).toBeVisible();
  await page.waitForTimeout(900);
  await scan(page, stile.code);
  await expect(page.getByRole('status')).toContainText('Mill to size: done');
  await page.click('[data-action="undo"]');
  await expect(page.locator('[data-message="undone"]')).toBeVisible();
  await scan(page, stile.code);
  await expect(setup).toHaveAttribute('data-stage', 'mill');
});

test('a code is typed on the screen’s own keypad', async ({ page }) => {
  const rail = hub.part('BENCH-3', 'rail-bottom');
  await hub.open(page, 'milling');
  await page.click('[data-action="type"]');
  for (const key of rail.code) await page.click(`[data-key="${key}"]`);
  await page.click('[data-key="enter"]');
  await expect(page.locator(`[data-code="${rail.code}"]`)).toBeVisible();
});

test('a mistyped code stays in the pad, which says what is wrong, and is mended there', async ({ page }) => {
  const { code } = hub.part('BENCH-3', 'stile-right');
  const wrong = `${code.slice(0, -1)}${code.endsWith('7') ? '8' : '7'}`;
  await hub.open(page, 'milling');
  await page.click('[data-action="type"]');
  for (const key of wrong) await page.click(`[data-key="${key}"]`);
  await page.click('[data-key="enter"]');
  await expect(page.getByRole('alert')).toContainText('Compare the code with the sticker');
  await expect(page.getByRole('textbox')).toHaveValue(wrong);
  await keep(page, 'typed-1280');
  await page.click('[data-key="back"]');
  await expect(page.getByRole('alert')).toBeEmpty();
  await page.click(`[data-key="${code.at(-1) ?? ''}"]`);
  await page.click('[data-key="enter"]');
  await expect(page.locator(`main[data-code="${code}"]`)).toBeVisible();
});

test('a badge that nobody in the shop has is asked about before marks carry it', async ({ page }) => {
  const address = `${hub.url}/api/shop`;
  const { revision, ...held } = (await (await fetch(address)).json()) as { revision: number };
  const people = [{ id: 'otis', name: 'Otis', badge: 'P-OTIS' }];
  const saved = await fetch(address, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ revision, shop: { ...held, people } }),
  });
  expect(saved.status).toBe(200);
  await hub.open(page, 'milling');
  await scan(page, 'P-STRAY');
  const asked = page.locator('[data-question]');
  await expect(asked).toContainText('Nobody in this shop has the badge P-STRAY');
  await expect(page.locator('[data-action="people"]')).toHaveText('Who works here?');
  await page.click('[data-answer="use"]');
  await expect(page.locator('[data-action="people"]')).toHaveText('STRAY');
  await scan(page, 'P-OTIS');
  await expect(page.locator('[data-action="people"]')).toHaveText('Otis');
  await scan(page, 'P-STRAY');
  await expect(page.locator('[data-action="people"]')).toHaveText('STRAY');
  await expect(asked).toHaveCount(0);
});

test('a job that is deleted, as by a restore, takes its setup off the screen of a station', async ({
  page,
}) => {
  const file = {
    format: 1,
    job: 'Sail store',
    units: 'in',
    doors: [{ mark: 'S', opening: { width: '16', height: '30' } }],
  };
  const id = await addJob(hub, file);
  const plan = (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan;
  const code = plan.doors[0]?.parts[0]?.code ?? '';
  await hub.open(page, 'milling');
  await scan(page, code);
  await expect(page.locator(`main[data-code="${code}"]`)).toBeVisible();
  expect((await fetch(`${hub.url}/api/jobs/${id}`, { method: 'DELETE' })).ok).toBe(true);
  await expect(page.locator('[data-message="job-gone"]')).toContainText(
    'Left stile of S-1 is not in any job',
  );
  await expect(page.locator(`main[data-code="${code}"]`)).toHaveCount(0);
});

test('two stations see each other’s marks', async ({ page, context }) => {
  const rail = hub.part('BENCH-3', 'rail-top');
  const other = await context.newPage();
  await hub.open(other, 'router-table');
  await hub.open(page, 'milling');
  await page.bringToFront();
  await scan(page, rail.code);
  await page.click('[data-action="done"]');
  await expect(page.getByRole('status')).toContainText('done');
  await expect(other.locator('li', { hasText: 'BENCH-3' })).toContainText('Top rail');
});

for (const size of [
  { width: 1280, height: 800 },
  { width: 1920, height: 1080 },
])
  test(
    `at ${size.width} × ${size.height} a setup with mid rails fits, its numerals are readable from two metres, every place is shown`,
    { tag: size.width === 1280 ? [] : '@proof' },
    async ({ page }) => {
      const stile = hub.part('BROOM-1', size.width === 1280 ? 'stile-left' : 'stile-right');
      await doneUntil(hub, stile, 'mortise');
      await page.setViewportSize(size);
      await hub.open(page, 'mortiser');
      await scan(page, stile.code);
      const setup = page.locator(`[data-code="${stile.code}"]`);
      await expect(setup).toBeVisible();
      await expect(page.locator('.drawing svg')).toBeVisible();
      const scrolls = await page.evaluate(
        () =>
          document.documentElement.scrollHeight > innerHeight + 1 ||
          document.documentElement.scrollWidth > innerWidth + 1,
      );
      expect(scrolls).toBe(false);
      const done = await page.locator('[data-action="done"]').boundingBox();
      for (const at of ['bottom', 'mid-1', 'mid-2', 'top']) {
        const cell = setup.locator(`[data-setting="stop"][data-place="${at}"]`);
        const box = await cell.boundingBox();
        expect((box?.y ?? 0) + (box?.height ?? 0), at).toBeLessThanOrEqual((done?.y ?? 0) + 1);
      }
      // The height of the digits as painted: the face's digits are 0.668 of its size.
      const type = await setup
        .locator('[data-setting="depthFromEdge"] .over')
        .evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
      const millimetres = (type * 0.668 * 531) / size.width;
      expect(millimetres).toBeGreaterThanOrEqual(13);
      const small = await setup
        .locator('[data-setting="stop"][data-place="top"] .over')
        .evaluate((element) => Number.parseFloat(getComputedStyle(element).fontSize));
      expect(small).toBeGreaterThanOrEqual(24);
      for (const numeral of await setup.locator('.value').all()) {
        const [ink, ground] = await numeral.evaluate((element) => {
          let behind: Element | null = element;
          while (behind !== null && getComputedStyle(behind).backgroundColor === 'rgba(0, 0, 0, 0)')
            behind = behind.parentElement;
          return [
            getComputedStyle(element).color,
            behind === null ? 'rgb(255, 255, 255)' : getComputedStyle(behind).backgroundColor,
          ] as const;
        });
        expect(contrast(ink, ground), `${ink} on ${ground}`).toBeGreaterThanOrEqual(7);
      }
      await page.emulateMedia({ reducedMotion: 'reduce' });
      const moving = await page.evaluate(
        () =>
          [...document.querySelectorAll('*')].filter((element) => {
            const { transitionDuration, animationName } = getComputedStyle(element);
            return animationName !== 'none' || transitionDuration !== '0s';
          }).length,
      );
      expect(moving).toBe(0);
      await keep(page, `mortiser-${size.width}`);
    },
  );

/** The contrast of two computed colours: WCAG 2.2's ratio of their relative luminances (from memory). */
function contrast(one: string, other: string): number {
  const [a = 0, b = 0] = [one, other]
    .map((colour) => {
      const [red = 0, green = 0, blue = 0] = (colour.match(/\d+/g) ?? []).map((part) => {
        const share = Number(part) / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    })
    .sort((x, y) => y - x);
  return (a + 0.05) / (b + 0.05);
}

/** A part and the stage that brings it to each station, in the order in which one door meets them. */
const STOPS = [
  ['milling', 'rail-top', 'mill'],
  ['band-saw', 'rail-top', 'arch'],
  ['spindle-sander', 'rail-top', 'smooth'],
  ['router-table', 'rail-top', 'bead'],
  ['table-saw', 'rail-top', 'shoulder'],
  ['mortiser', 'stile-left', 'mortise'],
  ['bench', 'stile-left', 'pare'],
  ['assembly', 'panel', 'dryfit'],
  ['fitting', 'panel', 'trim'],
] as const;

/** Which machine shows which danger is held by tests of the tables: here, that a screen shows it. */
const GUARDED: readonly string[] = ['router-table', 'table-saw', 'assembly'];

for (const [station, name, stage] of STOPS)
  test(
    `${station}: the gravest danger stands beside the setup, and all cautions one tap behind it`,
    {
      tag: GUARDED.includes(station) ? [] : '@proof',
    },
    async ({ page }) => {
      const door = hub.door('ARCH-R-1');
      const asked = hub.part('ARCH-R-1', name);
      if (station === 'assembly' || station === 'fitting')
        for (const each of door.parts) await doneUntil(hub, each, 'none');
      else await doneUntil(hub, asked, stage);
      if (station === 'fitting') await doneUntil(hub, { ...asked, stages: door.stages }, stage);
      await hub.open(page, station);
      await scan(page, asked.code);
      await expect(page.locator(`[data-code="${asked.code}"]`)).toHaveAttribute('data-stage', stage);
      const found = [...asked.stages, ...door.stages].find((each) => each.stage === stage);
      if (found === undefined) throw new Error(`no ${stage}`);
      const danger = cautionText(gravestOf(found, { part: asked }));
      const gravest = page.locator('[data-action="cautions"]');
      await expect(gravest).toHaveText(danger);
      const cautions = page.locator(`[data-cautions="${station}"]`);
      await expect(cautions).toHaveCount(0);
      await expect(page.locator('.drawing svg')).toBeVisible();
      await keep(page, `station-${station}`);
      await gravest.click();
      await expect(cautions).toContainText(danger);
      await expect(cautions.locator(`[data-cautions-of="${stage}"] li`).nth(2)).toBeVisible();
      await expect(cautions.locator('.always li').nth(2)).toBeAttached();
      await expect(cautions).toContainText('manual, local codes and proper training come first');
      expect(await faultsOf(page), 'cautions').toEqual([]);
      await page.click('[data-action="close-sheet"]');
      await expect(cautions).toHaveCount(0);
      await expect(page.locator(`main[data-code="${asked.code}"]`)).toBeVisible();
    },
  );

test('every number says why', async ({ page }) => {
  const rail = hub.part('ARCH-L-1', 'rail-top');
  await doneUntil(hub, rail, 'arch');
  await hub.open(page, 'band-saw');
  await scan(page, rail.code);
  await page.click('[data-setting="radius"] button');
  await expect(page.getByRole('dialog')).toContainText('÷ (8 × rise)');
  await expect(page.locator('[data-measured-from]')).toContainText('the trammel’s pivot');
  await expect(page.locator('[data-pare="arch"]')).toContainText('on the waste side of the line');
  await keep(page, 'why');
  await page.locator('.why').getByRole('button').click();
  const stile = hub.part('BENCH-1', 'stile-right');
  await doneUntil(hub, stile, 'groove');
  await hub.open(page, 'table-saw');
  await scan(page, stile.code);
  await page.click('[data-setting="blade"] button');
  await expect(page.getByRole('dialog')).toContainText('the widest dado');
  await expect(page.locator('[data-measured-from]')).toHaveCount(0);
});

test('how the stopped rip goes stands one tap away, for the end that is shown, and goes with its setup', async ({
  page,
}) => {
  const plan = await addedPlan(hub, {
    format: 1,
    job: 'Net store',
    units: 'in',
    ways: { strip: 'rip' },
    doors: [{ mark: 'NET', opening: { width: '15 1/4', height: '30' } }],
  });
  const [stile, other] = [partOf(plan, 'NET-1', 'stile-left'), partOf(plan, 'NET-1', 'stile-right')];
  for (const each of [stile, other]) await doneUntil(hub, each, 'strip');
  await hub.open(page, 'table-saw');
  await scan(page, stile.code);
  const how = page.locator('[data-how="strip"]');
  await page.click('[data-action="how"]');
  await expect(how.locator('li')).toHaveCount(6);
  await expect(how).toContainText('from its BOTTOM end');
  await expect(how).toContainText('wait until the blade has stopped');
  await keep(page, 'how');
  expect(await faultsOf(page), 'how').toEqual([]);
  await page.click('[data-action="close-sheet"]');
  await page.click('[data-place-choice="top"]');
  await page.click('[data-action="how"]');
  await expect(how).toContainText('from its TOP end');
  await scan(page, other.code);
  await expect(page.locator(`main[data-code="${other.code}"]`)).toBeVisible();
  await expect(how).toHaveCount(0);
  await page.click('[data-setting="fence"] button');
  await expect(page.locator('.why')).toBeVisible();
  await scan(page, stile.code);
  await expect(page.locator(`main[data-code="${stile.code}"]`)).toBeVisible();
  await expect(page.locator('.why')).toHaveCount(0);
});
