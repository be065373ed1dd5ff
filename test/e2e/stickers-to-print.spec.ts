import { expect, type Page, test } from '@playwright/test';
import type { Plan } from '#core/plan/plan.ts';
import { clippedOn } from './clipped.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { type PrinterStandIn, printerStandIn } from './printer-stand-in.ts';
import { faultsOf, keep, onlyPlan, partOf, post, scan } from './shop-floor.ts';

let hub: HubProcess;
let data: string;
let printers: PrinterStandIn;
let plan: Plan;

test.describe.configure({ mode: 'serial', timeout: 120_000 });
test.beforeAll(async () => {
  data = freshData();
  printers = printerStandIn();
  hub = await startHubProcess(data, 0, ['--demo'], printers.env);
  plan = await onlyPlan(hub);
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
  printers.remove();
});

const SIZES = [
  [1280, 800],
  [1920, 1080],
] as const;
/** Looks at a screen in both sizes. */
async function look(page: Page, name: string): Promise<void> {
  for (const [width, height] of SIZES) {
    await page.setViewportSize({ width, height });
    await keep(page, `${name}-${width}`);
    expect([...(await faultsOf(page, width === 1280)), ...(await clippedOn(page))]).toEqual([]);
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}
async function openJob(page: Page): Promise<void> {
  await page.goto(`${hub.url}/office`);
  await page.click(`[data-job="${plan.id}"] [data-action="show-job"]`);
}

test('a blank that is given up is a sticker to print at once, in an open office and on the board, and is printed where it was given up', async ({
  page,
  context,
}) => {
  const all = plan.doors.flatMap(({ parts }) => parts).length;
  await openJob(page);
  const line = page.locator(`[data-job="${plan.id}"] [data-to-print]`);
  await expect(line).toHaveText(`${all} stickers to print`);
  await page.selectOption('[name="printer"]', 'Labels');
  await page.click('[data-action="print"]');
  await expect(page.locator('[data-print="printed"]')).toHaveText('Printed.', { timeout: 30_000 });
  await expect(line).toHaveCount(0);

  const board = await context.newPage();
  await board.goto(`${hub.url}/board`);
  const strip = board.locator(`[data-due-job="${plan.id}"] [data-to-print]`);
  await expect(board.locator(`[data-due-job="${plan.id}"]`)).toBeVisible();
  await expect(strip).toHaveCount(0);

  const station = await context.newPage();
  await station.goto(`${hub.url}/station/milling`);
  await expect(station.locator('[data-loaded="true"]')).toBeVisible();
  const { code } = partOf(plan, 'BENCH-1', 'rail-top');
  await scan(station, code);
  await station.click('[data-action="spoil"]');
  await station.click('[data-reason="split"]');
  await station.click('[data-action="give-up"]');
  const offer = station.locator('[data-action="print-replacement"]');
  await expect(offer).toBeVisible();
  await look(station, 'message-replacement-print');

  await expect(line).toHaveText('1 sticker to print');
  await expect(strip).toHaveText('1 sticker to print');
  await expect(page.locator(`[data-choose-sticker="${code}"]`)).toHaveCount(0);
  const next = partOf(await onlyPlan(hub), 'BENCH-1', 'rail-top').code;
  await expect(page.locator(`[data-choose-sticker="${next}"]`)).toHaveAttribute('data-printed', '0');
  await look(page, 'office-replacement');
  await look(board, 'board-to-print');

  await offer.click();
  await expect(station.locator('[data-print="printed"]')).toHaveText('Printed.');
  await expect(page.locator(`[data-choose-sticker="${next}"]`)).toHaveAttribute('data-printed', '1');
  await expect(line).toHaveCount(0);
  await expect(strip).toHaveCount(0);
});

test('sizes as they came out that touch cut parts are asked about, and the stickers of before say so after', async ({
  page,
}) => {
  const { code } = partOf(plan, 'BENCH-1', 'rail-bottom');
  expect((await post(hub, code, 'milling', 'mill')).status).toBe(200);
  await page.goto(`${hub.url}/office`);
  await page.click(`[data-job="${plan.id}"] [data-action="show-sizes"]`);
  await page.selectOption('[name="measured-door"]', 'BENCH-1');
  await page.selectOption('[name="measured-part"]', 'stile-left');
  await page.fill('[name="measured-width"]', '2 3/8');
  await page.click('[data-action="save-measured"]');
  const question = page.locator('[data-question]');
  await expect(question.locator('[data-disagree="mill"]')).toContainText(/\([\d/]+ less\)/);
  await expect(question.locator('[data-outdated="BENCH-1"]')).toBeVisible();
  await look(page, 'office-measured-asked');
  await page.click('[data-answer="save"]');
  await expect(page.locator('[data-measured] [role="status"]')).toContainText('print');
  await page.click(`[data-job="${plan.id}"] [data-action="show-job"]`);
  const stale = page.locator(`[data-choose-sticker="${code}"]`);
  await expect(stale).toContainText('before the sizes changed');
  await expect(page.locator('p[data-to-print]')).toBeVisible();
  await page.locator('p[data-to-print]').scrollIntoViewIfNeeded();
  await look(page, 'office-outdated');
});

test('a running job says what goes with it before it is removed', async ({ page }) => {
  await openJob(page);
  await page.click(`[data-job="${plan.id}"] [data-action="delete-job"]`);
  await expect(page.locator('[data-question] [data-goes]')).toHaveText([
    '1 door begun',
    '2 marks',
    /^\d+ printed stickers$/,
  ]);
  await look(page, 'office-remove-asked');
  await page.keyboard.press('Escape');
  await expect(page.locator(`[data-job="${plan.id}"]`)).toBeVisible();
  await page.click(`[data-job="${plan.id}"] [data-action="delete-job"]`);
  await page.click('[data-answer="remove"]');
  await expect(page.locator(`[data-job="${plan.id}"]`)).toHaveCount(0);
});
