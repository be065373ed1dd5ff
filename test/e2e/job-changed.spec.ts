import { expect, type Page, test } from '@playwright/test';
import { clippedOn } from './clipped.ts';
import { demoHub } from './demo-hub.ts';
import { faultsOf, keep, post } from './shop-floor.ts';

const hub = demoHub();

test.describe.configure({ mode: 'serial', timeout: 120_000 });

async function edit(page: Page, mark: string): Promise<number> {
  await page.goto(`${hub.url}/office`);
  await page.click('[data-action="edit-job"]');
  const marks = page.locator('[name="mark"]');
  await expect(marks.first()).toBeVisible();
  const all = await marks.evaluateAll((inputs) => inputs.map((each) => (each as HTMLInputElement).value));
  return all.indexOf(mark);
}
const save = (page: Page) => page.click('[data-action="save-job"]');

test('a changed opening is asked about when parts are cut, told in the office, and shown on the board until it fits again', async ({
  page,
}) => {
  for (const part of ['rail-top', 'rail-bottom'])
    expect((await post(hub, hub.part('BENCH-1', part).code, 'milling', 'mill')).status).toBe(200);
  const row = await edit(page, 'BENCH');
  const width = page.locator('[name="width"]').nth(row);
  const before = await width.inputValue();
  await width.fill('25');
  await save(page);
  const question = page.locator('[data-question]');
  await expect(question).toContainText('Cut already');
  await expect(question.locator('[data-disagree]')).toHaveCount(2);
  await keep(page, 'office-cut-asked-1280');
  expect(await faultsOf(page)).toEqual([]);
  expect(await clippedOn(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(width).toHaveValue('25');
  await save(page);
  await page.click('[data-answer="save"]');
  const standing = page.locator('main > [data-cut-otherwise]');
  await expect(standing).toContainText('BENCH-1 · Top rail: Mill to size, length');
  await keep(page, 'office-cut-otherwise-1280');
  expect(await faultsOf(page)).toEqual([]);

  // A change that touches nothing more is saved without a word.
  await edit(page, 'BENCH');
  await page.fill('[name="due"]', '2027-05-03');
  await save(page);
  await expect(page.locator('.notice')).toContainText('Saved');

  await page.goto(`${hub.url}/board`);
  await page.locator('[data-door="BENCH-1"]').getByRole('button', { name: 'BENCH-1' }).press('Enter');
  await expect(page.locator('[data-door-sheet] [data-cut-otherwise]')).toHaveCount(2);
  await keep(page, 'board-door-cut-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.locator('[data-door-sheet] [data-part="rail-top"]').click();
  await expect(page.locator('[data-part-sheet] [data-disagree="mill"]')).toHaveCount(1);
  await keep(page, 'board-part-cut-1280');
  expect(await faultsOf(page)).toEqual([]);

  await edit(page, 'BENCH');
  await page.locator('[name="width"]').nth(row).fill(before);
  await save(page);
  await expect(page.locator('.notice')).toContainText('Saved');
  await expect(page.locator('[data-cut-otherwise]')).toHaveCount(0);
});

test('fewer doors than were marked, and a mark by another name, are asked about by door and number of marks', async ({
  page,
}) => {
  expect((await post(hub, hub.part('BENCH-3', 'panel').code, 'milling', 'mill')).status).toBe(200);
  const row = await edit(page, 'BENCH');
  await page.locator('[name="quantity"]').nth(row).fill('2');
  await save(page);
  await expect(page.locator('[data-question] [data-lost]')).toHaveText(['BENCH-3: 1 mark']);
  await page.click('[data-answer="stay"]');
  await page.locator('[name="quantity"]').nth(row).fill('3');
  await page.locator('[name="mark"]').nth(row).fill('SEAT');
  await save(page);
  await expect(page.locator('[data-question] [data-lost]')).toHaveText(['BENCH-1: 2 marks', 'BENCH-3: 1 mark']);
  await keep(page, 'office-lost-asked-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.click('[data-answer="save"]');
  await expect(page.locator('.notice')).toContainText('Saved');
  await edit(page, 'SEAT');
  await page.locator('[name="mark"]').nth(row).fill('BENCH');
  await save(page);
  await expect(page.locator('.notice')).toContainText('Saved');
  const done = (await hub.progress()).parts[hub.part('BENCH-3', 'panel').code]?.done;
  expect(Object.keys(done ?? {})).toEqual(['mill']);
});
