import { expect, type Page, test } from '@playwright/test';
import { printedAnswer } from '#core/api/prints-api.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { type PrinterStandIn, printerStandIn } from './printer-stand-in.ts';
import { codesOn } from '../labels/stickers/scan.ts';
import { faultsOf, keep, onlyPlan } from './shop-floor.ts';

let hub: HubProcess;
let data: string;
let printers: PrinterStandIn;

test.describe.configure({ mode: 'serial', timeout: 120_000 });
test.beforeAll(async () => {
  data = freshData();
  printers = printerStandIn();
  hub = await startHubProcess(data, 0, ['--demo'], printers.env);
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
  printers.remove();
});

async function openPrinting(page: Page, printer: string): Promise<void> {
  const { id } = await onlyPlan(hub);
  await page.goto(`${hub.url}/office`);
  await page.click(`[data-job="${id}"] [data-action="show-job"]`);
  await page.selectOption('[name="printer"]', printer);
}

async function codesOf(door: string): Promise<string[]> {
  const plan = await onlyPlan(hub);
  return plan.doors.find((each) => each.door === door)?.parts.map(({ code }) => code) ?? [];
}

/** For each printed sticker: on which printers, and whether again. */
async function record(): Promise<Record<string, (string | boolean | undefined)[][]>> {
  const { id } = await onlyPlan(hub);
  const answer: unknown = await (await fetch(`${hub.url}/api/jobs/${id}/printed`)).json();
  return Object.fromEntries(
    Object.entries(printedAnswer.parse(answer).codes).map(([code, times]) => [
      code,
      times.map(({ printer, reprint }) => [printer, reprint]),
    ]),
  );
}

test('a door’s stickers are printed to a chosen printer, seen done, and kept as printed', async ({
  page,
}) => {
  const codes = await codesOf('BENCH-1');
  await openPrinting(page, 'Labels');
  await page.click('[data-choose-door="BENCH-1"]');
  await page.click('[data-action="print"]');
  await expect(page.locator('[data-print="printed"]')).toHaveText('Printed.');
  for (const code of codes)
    await expect(page.locator(`[data-choose-sticker="${code}"]`)).toHaveAttribute('data-printed', '1');
  await keep(page, 'office-printed-1280');
  expect(await faultsOf(page)).toEqual([]);
  const [sheet = new Uint8Array()] = printers.taken('Labels');
  expect(await codesOn(sheet)).toEqual(new Set(codes));
  expect(await record()).toEqual(Object.fromEntries(codes.map((code) => [code, [['Labels', false]]])));
  // The sheet goes on behind what was printed, on this screen for as long as it stands there.
  await expect(page.locator('[name="from"]')).toHaveValue(String(codes.length + 1));
  await page.reload();
  await openPrinting(page, 'Labels');
  await expect(page.locator('[name="from"]')).toHaveValue(String(codes.length + 1));
});

test('a range of them is printed again by its first and last, and kept as a reprint', async ({ page }) => {
  const codes = await codesOf('BENCH-1');
  await openPrinting(page, 'Labels');
  await page.click(`[data-choose-sticker="${codes[3] ?? ''}"]`);
  await page.click(`[data-choose-sticker="${codes[1] ?? ''}"]`);
  await expect(page.locator('[data-choose-sticker][aria-pressed="true"]')).toHaveCount(3);
  await page.click('[data-action="print"]');
  await expect(page.locator('[data-print="printed"]')).toBeVisible();
  const sheet = printers.taken('Labels').at(-1) ?? new Uint8Array();
  expect(await codesOn(sheet)).toEqual(new Set(codes.slice(1, 4)));
  const once = [['Labels', false]];
  const again = [...once, ['Labels', true]];
  expect(await record()).toEqual(
    Object.fromEntries(codes.map((code, k) => [code, k >= 1 && k <= 3 ? again : once])),
  );
});

test('a printer that takes the stickers and never prints them says so, and nothing is kept as printed', async ({
  page,
}) => {
  const before = await record();
  const [first = ''] = await codesOf('KEYS-1');
  await openPrinting(page, 'Jam');
  await page.click('[data-choose-door="KEYS-1"]');
  await page.click('[data-action="print"]');
  await expect(page.locator('[data-print="failed"]')).toContainText('Jam is stopped');
  await expect(page.locator('[data-print="failed"]')).toContainText('Nothing counts as printed');
  await expect(page.locator(`[data-choose-sticker="${first}"]`)).toHaveAttribute('data-printed', '0');
  await keep(page, 'office-jam-1280');
  expect([printers.taken('Jam').length, printers.cancelled('Jam')]).toEqual([0, 1]);
  expect(await record()).toEqual(before);
});
