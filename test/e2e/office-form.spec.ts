import { expect, type Page, test } from '@playwright/test';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { faultsOf, keep } from './shop-floor.ts';

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

async function newJob(page: Page): Promise<void> {
  await page.goto(`${hub.url}/office`);
  await page.click('[data-action="new-job"]');
}

test('a tap on a field low on the screen brings the keys up and types nothing, and the field stays in sight', async ({
  page,
}) => {
  await newJob(page);
  const field = page.locator('[name="defaults.tenon.innerSetback"]');
  await field.evaluate((input) => input.scrollIntoView({ block: 'end' }));
  const box = await field.boundingBox();
  if (box === null) throw new Error('the field is not shown');
  expect(box.y).toBeGreaterThan(800 * 0.7);
  const point = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.touchscreen.tap(point.x, point.y);
  const keys = page.locator('[data-screen-keys="length"]');
  await expect(keys).toBeVisible();
  // The keys stand where the finger was.
  expect((await keys.boundingBox())?.y ?? 800).toBeLessThan(point.y);
  await expect(field).toHaveValue('1/4');
  await expect(field).toBeFocused();
  const above = (await keys.boundingBox())?.y ?? 0;
  await expect
    .poll(async () => {
      const now = await field.boundingBox();
      return now !== null && now.y > 0 && now.y + now.height <= above + 0.5;
    })
    .toBe(true);
  await keep(page, 'office-keys-low-1280');
  const one = await keys.locator('[data-key="3"]').boundingBox();
  if (one === null) throw new Error('no key 3');
  await page.touchscreen.tap(one.x + one.width / 2, one.y + one.height / 2);
  await expect(field).toHaveValue('1/43');
});

test('a finger held down on a field for as long as it likes types nothing either', async ({ page }) => {
  await newJob(page);
  const field = page.locator('[name="defaults.tenon.innerSetback"]');
  await field.evaluate((input) => input.scrollIntoView({ block: 'end' }));
  const box = await field.boundingBox();
  if (box === null) throw new Error('the field is not shown');
  const touches = [{ x: box.x + box.width / 2, y: box.y + box.height / 2 }];
  const session = await page.context().newCDPSession(page);
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: touches });
  await page.waitForTimeout(250);
  await expect(page.locator('[data-screen-keys]')).toHaveCount(0);
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await expect(page.locator('[data-screen-keys="length"]')).toBeVisible();
  await expect(field).toHaveValue('1/4');
});

test('a job whose name has spaces and umlauts is changed and saved again', async ({ page }) => {
  await newJob(page);
  await page.fill('[name="job"]', 'Küche & Flur, großer Schrank');
  await page.fill('[name="mark"]', 'K1');
  await page.fill('[name="width"]', '16-1/2"');
  await page.fill('[name="height"]', '28');
  await page.click('[data-action="save-job"]');
  await expect(page.getByRole('status')).toContainText('Küche & Flur, großer Schrank');
  for (const height of ['29', '30 1/4']) {
    await page.click('[data-action="edit-job"]');
    await expect(page.locator('[name="job"]')).toHaveValue('Küche & Flur, großer Schrank');
    await expect(page.getByRole('alert')).toHaveCount(0);
    await page.fill('[name="height"]', height);
    await page.click('[data-action="save-job"]');
    await expect(page.locator('[data-action="save-job"]')).toHaveCount(0);
  }
  await page.click('[data-action="edit-job"]');
  await expect(page.locator('[name="height"]')).toHaveValue('30 1/4');
  expect(await faultsOf(page)).toEqual([]);
});
