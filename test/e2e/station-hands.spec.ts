import { stageOf } from '#core/plan/stage-of.ts';
import { expect, type Page, test } from '@playwright/test';
import { clippedOn } from './clipped.ts';
import { demoHub } from './demo-hub.ts';
import { doneUntil, faultsOf, keep, scan } from './shop-floor.ts';

const hub = demoHub();

test('a code typed slowly on a keyboard comes up in the pad, which Enter, Backspace and Escape serve', async ({
  page,
}) => {
  const rail = hub.part('BENCH-3', 'rail-bottom');
  await hub.open(page, 'milling');
  await page.keyboard.type(`${rail.code.toLowerCase()}x`, { delay: 200 });
  const field = page.locator('[role="dialog"] input');
  await expect(field).toHaveValue(new RegExp(`^${rail.code}x$`, 'i'));
  await keep(page, 'typed-1280');
  await page.keyboard.press('Escape');
  await expect(field).toHaveCount(0);
  await page.keyboard.type(rail.code.slice(0, 9), { delay: 200 });
  await page.keyboard.type('Q', { delay: 200 });
  await page.keyboard.press('Backspace');
  await page.keyboard.type(rail.code.slice(9));
  await page.keyboard.press('Enter');
  await expect(page.locator(`[data-code="${rail.code}"]`)).toBeVisible();
});

test('half a code says that half came, and its Enter presses nothing', async ({ page }) => {
  const rail = hub.part('BENCH-3', 'rail-bottom');
  await hub.open(page, 'milling');
  await scan(page, rail.code);
  await expect(page.locator('[data-action="done"]')).toBeFocused();
  await page.waitForTimeout(900);
  await scan(page, `X${rail.code.slice(6)}`);
  await expect(page.locator('[data-message="malformed"]')).toContainText('Only half a code came');
  await expect(page.locator(`[data-code="${rail.code}"]`)).toBeVisible();
});

test('from a keyboard alone: Done has the focus, a message holds it and closes with Enter, a badge is typed', async ({
  page,
}) => {
  const stile = hub.part('BENCH-2', 'stile-left');
  await hub.open(page, 'band-saw');
  await scan(page, stile.code);
  const message = page.locator('[data-message="wrong-station"]');
  await expect(message).toContainText('Left stile of BENCH-2');
  for (let k = 0; k < 3; k += 1) await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.closest('header, main') === null)).toBe(true);
  await page.locator('[data-message] button').focus();
  await page.waitForTimeout(200);
  await page.keyboard.press('Enter');
  await expect(message).toHaveCount(0);
  await page.locator('[data-action="people"]').focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-empty="people"]')).toContainText('shop page');
  await page.getByRole('button', { name: 'Type a badge' }).press('Enter');
  await expect(page.locator('[data-key="enter"]')).toBeDisabled();
  await page.keyboard.type('wren');
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-action="people"]')).toHaveText('WREN');
  await hub.open(page, 'milling');
  await scan(page, stile.code);
  await expect(page.locator('[data-action="done"]')).toBeFocused();
  await page.waitForTimeout(900);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('status')).toContainText('Left stile of BENCH-2');
});

test('one button shows numbers and drawing in millimetres and decimal inches, and the screen keeps it', async ({
  page,
}) => {
  const stile = hub.part('LOCKER-1', 'stile-left');
  await doneUntil(hub, stile, 'mortise');
  await hub.open(page, 'mortiser');
  await scan(page, stile.code);
  const measure = page.locator('[data-action="measure"]');
  await expect(measure).toContainText('inches');
  const exact = stageOf(stile, 'mortise')?.places[0]?.settings.stop;
  // 2 25/32 in is 70.64375 mm, a stop is brought up: to 70.7, and in thousandths of an inch to 2.782.
  expect(exact).toBe('2 25/32');
  const number = page.locator('[data-setting="stop"][data-place="bottom"] .value .hidden');
  const drawn = page.locator('svg text[data-name="stop"][data-role="dimension-value"]').first();
  const before = await number.textContent();
  for (const [unit, set] of [
    ['mm', '70 7/10'],
    ['inches .000', '2 391/500'],
  ] as const) {
    await measure.click();
    await expect(measure).toContainText(unit);
    await expect(number).not.toHaveText(before ?? '');
    const shown = (await number.textContent()) ?? '';
    await expect(drawn).toHaveText(shown);
    await expect(drawn).toHaveAttribute('data-drawn-value', set);
    await keep(page, `measure-${unit === 'mm' ? 'mm' : 'decimals'}-1280`);
    expect([...(await clippedOn(page)), ...(await faultsOf(page, false))]).toEqual([]);
  }
  await hub.open(page, 'mortiser');
  await scan(page, stile.code);
  await expect(measure).toContainText('inches .000');
  await page.locator('[data-setting="stop"][data-place="bottom"] button').click();
  await expect(page.locator('.why')).toContainText('exactly');
});

/** The room left below the last setting, in CSS pixels. */
async function spareOf(page: Page): Promise<number> {
  return page.locator('.settings').evaluate((box) => {
    const last = box.lastElementChild?.getBoundingClientRect().bottom ?? 0;
    return box.getBoundingClientRect().bottom - last;
  });
}

for (const language of ['en', 'pseudo'])
  test(
    `a stile with two mid rails keeps its settings clear of the buttons in every measure, at both sizes, in ${language}`,
    { tag: language === 'en' ? '@proof' : [] },
    async ({ page }) => {
      const stile = hub.part('BROOM-1', 'stile-left');
      await doneUntil(hub, stile, 'mortise');
      await page.goto(`${hub.url}/station/mortiser?language=${language}`);
      await expect(page.locator('[data-loaded="true"]')).toBeVisible();
      await scan(page, stile.code);
      for (const unit of ['fractions', 'mm', 'decimals']) {
        for (const size of [
          { width: 1920, height: 1080 },
          { width: 1280, height: 800 },
        ]) {
          await page.setViewportSize(size);
          await page.waitForTimeout(50);
          expect(await spareOf(page), `${unit} at ${size.width}`).toBeGreaterThanOrEqual(-1);
          expect([...(await clippedOn(page)), ...(await faultsOf(page, false))]).toEqual([]);
        }
        await page.click('[data-action="measure"]');
      }
      await scan(page, 'AAAAAAAAAA');
      await expect(page.locator('[data-message="bad-check"]')).toBeVisible();
      expect(await spareOf(page)).toBeGreaterThanOrEqual(-1);
      expect(await clippedOn(page)).toEqual([]);
    },
  );

test('the queue shows the rest of a group and of the queue on a tap', async ({ page }) => {
  await hub.open(page, 'milling');
  await keep(page, 'queue-1280');
  await page.click('[data-action="show-queue"]');
  const sheet = page.getByRole('dialog');
  const waiting = await page.locator('h3').textContent();
  expect(waiting).toContain(`(${await sheet.locator('li').count()})`);
  await keep(page, 'queue-all-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(sheet).toHaveCount(0);
});

test('the choice of station marks the present one and leads back to it', async ({ page }) => {
  await hub.open(page, 'bench');
  await page.getByRole('button', { name: 'Other station' }).click();
  await expect(page.locator('[data-choose-station="bench"]')).toContainText('this screen');
  await page.setViewportSize({ width: 1280, height: 800 });
  await keep(page, 'choose-1280');
  expect([...(await clippedOn(page)), ...(await faultsOf(page, false))]).toEqual([]);
  await page.click('[data-action="back"]');
  await expect(page.getByRole('heading', { name: 'Bench' })).toBeVisible();
});
