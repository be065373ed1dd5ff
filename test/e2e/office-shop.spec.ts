import { stageOf } from '#core/plan/stage-of.ts';
import { expect, type Page, test } from '@playwright/test';
import { demoHub } from './demo-hub.ts';
import { faultsOf, keep, onlyPlan, partOf, post, scan } from './shop-floor.ts';

const hub = demoHub();

test.describe.configure({ mode: 'serial', timeout: 120_000 });

async function openOffice(page: Page, part: 'jobs' | 'shop' | 'safety'): Promise<void> {
  await page.goto(`${hub.url}/office`);
  await page.click(`[data-page="${part}"]`);
}

test('people, rounding, scanner and screen are typed on the screen’s own keys and known at every station at once', async ({
  page,
  context,
}) => {
  const station = await context.newPage();
  await station.goto(`${hub.url}/station/milling`);
  await expect(station.locator('[data-loaded="true"]')).toBeVisible();
  const before = await station.evaluate(() =>
    getComputedStyle(document.documentElement).getPropertyValue('--numeral'),
  );
  await page.bringToFront();
  await openOffice(page, 'shop');
  await page.click('[data-action="add-person"]');
  await page.tap('[name="person-name"]');
  await expect(page.locator('[data-screen-keys="text"]')).toBeVisible();
  for (const key of ['w', 'r', 'e', 'n', ' ', 'upper', 'a']) await page.tap(`[data-key="${key}"]`);
  await expect(page.locator('[name="person-name"]')).toHaveValue('Wren A');
  await keep(page, 'office-keys-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.tap('[name="person-badge"]');
  for (const key of ['W', '7', '8', 'back']) await page.tap(`[data-screen-keys="badge"] [data-key="${key}"]`);
  await page.tap('[data-key="close-keys"]');
  await expect(page.locator('[data-screen-keys]')).toHaveCount(0);
  await page.selectOption('[name="denominator"]', '16');
  await page.fill('[name="scanner-prefix"]', ']C1');
  await page.fill('[name="width.milling"]', '344');
  await page.click('[data-action="save-shop"]');
  await expect(page.getByRole('status')).toContainText('Saved');
  await keep(page, 'office-shop-1280');
  expect(await faultsOf(page)).toEqual([]);

  await station.bringToFront();
  await expect
    .poll(() =>
      station.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--numeral')),
    )
    .not.toBe(before);
  await scan(station, ']C1P-W7');
  await expect(station.locator('[data-message="badge"]')).toContainText('Wren A');
  const part = partOf(await onlyPlan(hub), 'BENCH-1', 'panel');
  await scan(station, `]C1${part.code}`);
  await expect(station.locator(`[data-code="${part.code}"]`)).toBeVisible();
  const shown = await station.locator('[data-setting="width"] .under').allTextContents();
  for (const denominator of shown) expect(16 % Number(denominator)).toBe(0);
  await station.click('[data-action="people"]');
  await expect(station.locator('[data-badge="P-W7"]')).toHaveText('Wren A');
  await station.close();
});

test('the office shows every caution by its stage, each with the number of a source that stands below', async ({
  page,
}) => {
  await openOffice(page, 'shop');
  const fold = page.locator('[data-caution-sources]');
  await expect(fold.locator('[data-source]').first()).toBeHidden();
  await fold.locator('summary').click();
  await expect(fold).toContainText('manual, local codes and proper training come first');
  await expect(fold.locator('[data-source="osha-3157"]')).toContainText('1999. Public domain.');
  await expect(fold.locator('[data-source="hse-l114"]')).toContainText('2014. Open Government Licence.');
  const sources = await fold.locator('[data-source]').count();
  const numbers = await fold.locator('[data-caution-source] small').allTextContents();
  expect(numbers.length).toBeGreaterThan(100);
  for (const each of numbers)
    for (const number of /\[([\d, ]+)\]/.exec(each)?.[1]?.split(', ') ?? ['0'])
      expect(Number(number), each).toBeGreaterThanOrEqual(1);
  expect(Math.max(...numbers.flatMap((each) => (each.match(/\d+/g) ?? []).map(Number)))).toBe(sources);
  await fold.getByRole('heading', { name: 'Router table', exact: true }).scrollIntoViewIfNeeded();
  await keep(page, 'office-cautions-1280');
  expect(await faultsOf(page)).toEqual([]);
});

test('with a PIN the office opens only to it, a wrong one is told, and leaving locks it again', async ({
  page,
}) => {
  await openOffice(page, 'safety');
  await page.fill('[name="new-pin"]', '4711');
  await page.click('[data-action="set-pin"]');
  await expect(page.getByRole('status')).toContainText('The PIN is set');
  await keep(page, 'office-safety-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.getByRole('button', { name: 'Board' }).click();
  await expect(page).toHaveURL(/board$/);
  await page.getByRole('button', { name: 'Office' }).click();
  const pad = page.locator('[data-pin-pad]');
  await expect(pad).toBeVisible();
  await expect(page.locator('[data-action="new-job"]')).toHaveCount(0);
  expect(await faultsOf(page)).toEqual([]);
  await keep(page, 'pin-1280');
  for (const key of '0000') await page.tap(`[data-pin-pad] [data-key="${key}"]`);
  await page.tap('[data-pin-pad] [data-key="enter"]');
  await expect(pad).toContainText('That is not the PIN');
  await page.keyboard.type('4711');
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-action="new-job"]')).toBeVisible();

  await page.getByRole('button', { name: 'Station' }).click();
  await page.locator('[data-action="leave"]').click();
  await expect(pad).toBeVisible();
  await page.keyboard.type('4711');
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-said="leave"]')).toContainText('not in full-screen mode');
});

test('a backup is made and put back, and sizes as they came out change what is set', async ({ page }) => {
  await page.goto(`${hub.url}/office`);
  const pad = page.locator('[data-pin-pad]');
  await expect(pad).toBeVisible();
  await page.keyboard.type('4711');
  await page.keyboard.press('Enter');
  await page.click('[data-page="safety"]');
  await page.click('[data-action="drop-pin"]');
  await expect(page.getByRole('status')).toContainText('no PIN now');
  await page.click('[data-action="back-up"]');
  await expect(page.getByRole('status')).toContainText('Backed up and read back: 1 job, ');

  const stile = partOf(await onlyPlan(hub), 'BENCH-1', 'stile-left');
  const mortise = stageOf(stile, 'mortise');
  expect((await post(hub, stile.code, 'milling', 'mill')).status).toBe(200);
  await page.click('[data-page="jobs"]');
  await page.click('[data-action="show-sizes"]');
  await page.fill('[name="measured-thickness"]', '25/32');
  await page.click('[data-action="save-measured"]');
  await expect(page.locator('[data-measured]')).toContainText('Stations show the new settings');
  await keep(page, 'office-measured-1280');
  const after = partOf(await onlyPlan(hub), 'BENCH-1', 'stile-left');
  expect(stageOf(after, 'mortise')?.settings.fence).not.toBe(mortise?.settings.fence);

  await page.click('[data-page="safety"]');
  const newest = page.locator('[data-backup]').last();
  await newest.locator('[data-action="restore"]').click();
  await newest.locator('[data-action="restore-yes"]').click();
  await expect(page.getByRole('status')).toContainText('Restored as of');
  const back = partOf(await onlyPlan(hub), 'BENCH-1', 'stile-left');
  expect(stageOf(back, 'mortise')?.settings.fence).toBe(mortise?.settings.fence);
});

test('an exported file is put in place of everything after one more question, and the hub says how it is', async ({
  page,
}) => {
  await openOffice(page, 'safety');
  const health = page.locator('[data-health]');
  await expect(health).toHaveAttribute('data-health', 'well');
  await expect(page.locator('[data-health-of="data"]')).toHaveText(hub.data);
  await expect(page.locator('[data-health-of="disk"]')).toContainText(/^\d+ of \d+\sGB free$/);
  await expect(page.locator('[data-health-of="log"]')).toContainText(/^\d+ lines,\s\d+\sMB$/);
  await expect(page.locator('[data-health-of="backup"]')).not.toHaveText('None yet');

  const exported = Buffer.from(await (await fetch(`${hub.url}/api/export`)).arrayBuffer());
  const id = (await onlyPlan(hub)).id;
  expect((await fetch(`${hub.url}/api/jobs/${id}`, { method: 'DELETE' })).status).toBe(204);
  const choose = (buffer: Buffer) =>
    page.setInputFiles('[name="import"]', { name: 'shop.json', mimeType: 'application/json', buffer });
  await choose(Buffer.from('[]'));
  await page.click('[data-action="import-yes"]');
  await expect(page.getByRole('status')).toContainText('no archive');
  await choose(exported);
  await expect(page.locator('.import')).toContainText('replaced by what is in shop.json');
  expect(await faultsOf(page)).toEqual([]);
  await keep(page, 'office-import-1280');
  await page.click('[data-action="import-yes"]');
  await expect(page.getByRole('status')).toContainText('Restored as of');
  expect((await onlyPlan(hub)).id).toBe(id);
});
