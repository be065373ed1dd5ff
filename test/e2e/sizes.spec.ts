import { expect, test } from '@playwright/test';
import { clippedOn } from './clipped.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { addJob, faultsOf, keep } from './shop-floor.ts';

let hub: HubProcess;
const data = freshData();

test.describe.configure({ mode: 'serial', timeout: 120_000 });
test.beforeAll(async () => {
  hub = await startHubProcess(data);
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
});

/** A job of two thicknesses, the first of its doors with another reveal on each side. */
const UNEVEN = {
  format: 1,
  id: 'quay-house',
  job: 'Quay house',
  units: 'in',
  doors: [
    {
      mark: 'PIER',
      opening: { width: '16', height: '30' },
      reveal: { left: '1/16', right: '1/8', bottom: '3/16', top: '3/32' },
    },
    { mark: 'MOLE', opening: { width: '16', height: '30' }, thickness: '13/16' },
  ],
};

test('a reveal for each side is one tap away in the form, for the whole job and for one door, and is drawn', async ({
  page,
}) => {
  await page.goto(`${hub.url}/office`);
  await page.click('[data-action="new-job"]');
  await page.fill('[name="job"]', 'Salt store');
  await page.fill('[name="mark"]', 'A');
  await page.fill('[name="width"]', '16');
  await page.fill('[name="height"]', '30');
  const ofJob = page.locator('.defaults .reveal');
  await ofJob.locator('[data-action="reveal-apart"]').click();
  await expect(page.locator('[name="defaults.reveal.left"]')).toBeFocused();
  await page.fill('[name="defaults.reveal.top"]', '1/8');
  await page.fill('[name="defaults.reveal.bottom"]', '1,8');
  await page.locator('[name="defaults.reveal.bottom"]').blur();
  await expect(page.locator('[data-told="defaults.reveal.bottom"]')).toContainText('Type a point');
  await page.fill('[name="defaults.reveal.bottom"]', '3/16');
  await ofJob.scrollIntoViewIfNeeded();
  await keep(page, 'reveals-job-1280');
  expect(await faultsOf(page)).toEqual([]);
  expect(await clippedOn(page)).toEqual([]);
  await page.click('[data-action="more-for-door"]');
  const more = page.locator('[data-more]');
  await more.locator('[data-action="reveal-apart"]').click();
  await expect(page.locator('[name="reveal.top"]')).toHaveAttribute('placeholder', '1/8');
  await expect(page.locator('[name="reveal.left"]')).toHaveAttribute('placeholder', '1/16');
  await page.fill('[name="reveal.right"]', '3/32');
  await more.scrollIntoViewIfNeeded();
  await keep(page, 'reveals-door-1280');
  expect(await faultsOf(page)).toEqual([]);
});

test('actual sizes have a line for each size that is specified, and a part its length', async ({ page }) => {
  const id = await addJob(hub, UNEVEN);
  await page.goto(`${hub.url}/office`);
  await page.click('[data-action="show-sizes"]');
  const panel = page.locator('[data-measured]');
  await expect(panel).toBeVisible();
  await expect(panel.getByLabel('Thickness, specified 3/4')).toBeVisible();
  await panel.getByLabel('Thickness, specified 13/16').fill('25/32');
  await page.click('[data-action="save-measured"]');
  await expect(panel.getByRole('status')).toContainText('Saved');
  await panel.scrollIntoViewIfNeeded();
  await keep(page, 'measured-sizes-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.selectOption('[name="measured-door"]', 'PIER-1');
  await page.selectOption('[name="measured-part"]', 'rail-top');
  await page.fill('[name="measured-length"]', '14 7/16');
  await page.click('[data-action="save-measured"]');
  await keep(page, 'measured-part-1280');
  const kept = async () => {
    const answer = await page.request.get(`${hub.url}/api/jobs/${id}/file`);
    return ((await answer.json()) as { measured: unknown }).measured;
  };
  await expect.poll(kept).toEqual({
    thickness: [{ of: '13/16', is: '25/32' }],
    doors: { 'PIER-1': { parts: { 'rail-top': { length: '14 7/16' } } } },
  });
});
