import { expect, test } from '@playwright/test';
import { z } from 'zod';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { addJob, faultsOf, keep, onlyPlan, post, threeHundredDoors } from './shop-floor.ts';

test.describe.configure({ timeout: 150_000 });
const hubs: HubProcess[] = [];
test.afterEach(async () => {
  for (const hub of hubs.splice(0)) {
    await hub.end('SIGTERM');
    removeData(hub.data);
  }
});

const trace = z.object({
  traceEvents: z.array(
    z.object({
      name: z.string(),
      pid: z.number().optional(),
      tid: z.number().optional(),
      tdur: z.number().optional(),
      args: z.object({ name: z.string().optional() }).optional(),
    }),
  ),
});

/**
 * How long each task of a page's main thread took, in milliseconds of that thread's own time: what else runs on this
 * machine is not the board's.
 */
function tasksOf(traced: Buffer): number[] {
  const { traceEvents } = trace.parse(JSON.parse(traced.toString()));
  const threads = traceEvents
    .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
    .map(({ pid, tid }) => `${pid ?? ''}/${tid ?? ''}`);
  return traceEvents
    .filter(({ name, pid, tid }) => /RunTask$/.test(name) && threads.includes(`${pid ?? ''}/${tid ?? ''}`))
    .map(({ tdur = 0 }) => tdur / 1000);
}

test(
  'with three hundred doors on the board no task takes over 100 ms while 20 marks a second arrive',
  { tag: '@proof' },
  async ({ page, browser }) => {
    const hub = await shop([]);
    await addJob(hub, threeHundredDoors());
    const plan = await onlyPlan(hub);
    const parts = plan.doors.flatMap(({ parts }) => parts);
    await page.goto(`${hub.url}/board`);
    await expect(page.locator('[data-door]')).toHaveCount(300, { timeout: 20_000 });
    await page.waitForTimeout(1000);
    await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline'] });
    const MARKS = 100;
    const began = Date.now();
    for (let k = 0; k < MARKS; k += 1) {
      await new Promise((soon) => setTimeout(soon, Math.max(0, began + k * 50 - Date.now())));
      expect((await post(hub, parts[k * 7]?.code ?? '', 'milling', 'mill')).status).toBe(200);
    }
    expect((Date.now() - began) / MARKS).toBeLessThan(75);
    // Every mark has come: what the rows say is done adds up to them.
    await expect
      .poll(() =>
        page.evaluate(() =>
          [...document.querySelectorAll('progress')].reduce((sum, { value }) => sum + value, 0),
        ),
      )
      .toBe(MARKS);
    const tasks = tasksOf(await browser.stopTracing());
    expect(tasks.length).toBeGreaterThan(MARKS);
    expect(Math.max(...tasks)).toBeGreaterThan(1);
    expect(Math.max(...tasks)).toBeLessThan(100);
  },
);

test('the board tells the pace and when the job will be finished, what a door waits for, and is one tap from a door and from a part', async ({
  page,
}) => {
  const hub = await shop(['--demo']);
  const parts = (await onlyPlan(hub)).doors.slice(0, 2).flatMap((door) => door.parts);
  for (const { code } of parts) expect((await post(hub, code, 'milling', 'mill')).status).toBe(200);
  for (const { code, stages } of parts)
    if (stages.some(({ stage }) => stage === 'bead')) await post(hub, code, 'router-table', 'bead');
  await page.goto(`${hub.url}/board`);
  const job = page.locator('[data-due-job]');
  // All of it was marked within a minute: that promises nothing.
  await expect(page.locator('[data-pace]')).toContainText('Too early to tell the pace');
  await expect(job).not.toHaveAttribute('data-finished', /./);
  await page.route('**/progress', async (route) => {
    const answer = await route.fetch();
    await route.fulfill({ response: answer, json: threeDaysAgo(await answer.json()) });
  });
  await page.reload();
  await expect(page.locator('[data-pace]')).toContainText('At the present pace of');
  await expect(job).toHaveAttribute('data-finished', /^20\d\d-\d\d-\d\d$/);
  await expect(job).toContainText('expected');
  const name = 'BENCH-3';
  const row = page.locator(`[data-door="${name}"]`);
  await expect(row).toHaveAttribute('data-reached', 'mill');
  await expect(row).toContainText('at milling');
  await expect(row).toHaveAttribute('data-behind', '5');
  await expect(row).toContainText('5 of 5 parts to do');
  await keep(page, 'board-1280');
  expect(await faultsOf(page)).toEqual([]);
  await row.locator('[data-part="stile-left"]').click();
  await expect(page.locator('[data-part-sheet="stile-left"] [data-stage-state="next"]')).toContainText(
    'Mill to size',
  );
  expect(await faultsOf(page)).toEqual([]);
  await keep(page, 'board-part-1280');
  await page.click('[data-action="close-sheet"]');
  await expect(page.locator('[data-door-sheet]')).toHaveCount(0);
  await row.getByRole('button', { name }).press('Enter');
  await expect(page.locator(`[data-door-sheet="${name}"] [data-part]`)).toHaveCount(5);
  await expect(page.locator(`[data-door-sheet="${name}"] svg`)).toBeVisible();
  expect(await faultsOf(page)).toEqual([]);
  await keep(page, 'board-door-1280');
});

test('from the board a part’s last stage is taken back after a question, with the PIN where there is one, and a refusal is told', async ({
  page,
}) => {
  const hub = await shop(['--demo']);
  const part = (await onlyPlan(hub)).doors[0]?.parts[0];
  if (part === undefined) throw new Error('no part');
  for (const [station, stage] of [
    ['milling', 'mill'],
    ['router-table', 'bead'],
  ] as const)
    expect((await post(hub, part.code, station, stage)).status).toBe(200);
  await page.goto(`${hub.url}/board`);
  await page.locator('[data-door="BENCH-1"]').getByRole('button', { name: 'BENCH-1' }).press('Enter');
  await page.locator('[data-door-sheet] [data-part="stile-left"]').click();
  const back = page.locator('[data-action="take-back"]');
  await expect(back).toHaveText('Undo: Stick the bead');
  await back.click();
  await expect(page.locator('[data-question]')).toContainText('“Stick the bead” of Left stile of BENCH-1');
  await keep(page, 'board-take-back-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(page.locator('[data-question]')).toHaveCount(0);
  await expect(back).toHaveText('Undo: Stick the bead');
  await back.click();
  // Meanwhile it went on at the table saw, so it stands under something that is done.
  expect((await post(hub, part.code, 'table-saw', 'groove')).status).toBe(200);
  await page.click('[data-answer="take-back"]');
  await expect(page.locator('[data-said="take-back"]')).toContainText('cannot be undone');
  await expect(back).toHaveText('Undo: Plow the groove');

  const pin = await fetch(`${hub.url}/api/pin`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ pin: '4711' }),
  });
  expect(pin.status).toBe(200);
  await back.click();
  await page.click('[data-answer="take-back"]');
  await expect(page.locator('[data-pin-pad]')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(back).toHaveText('Undo: Plow the groove');
  await back.click();
  await page.click('[data-answer="take-back"]');
  for (const key of '4711') await page.tap(`[data-pin-pad] [data-key="${key}"]`);
  await page.tap('[data-pin-pad] [data-key="enter"]');
  await expect(page.locator('[data-said="take-back"]')).toHaveText(
    'Plow the groove: open again, at the table saw.',
  );
  await expect(back).toHaveText('Undo: Stick the bead');
});

/** A progress as it would be had its marks been made three days ago, from eight in the morning till about four. */
function threeDaysAgo(progress: unknown): unknown {
  const day = new Date(Date.now() - 3 * 86_400_000).setHours(8, 0, 0, 0);
  let marks = 0;
  return JSON.parse(JSON.stringify(progress), (name, value: unknown) => {
    if (name !== 'at') return value;
    marks += 1;
    return new Date(day + Math.min(marks * 30, 480) * 60_000).toISOString();
  });
}

/** A hub of its own. */
async function shop(args: readonly string[]): Promise<HubProcess> {
  const hub = await startHubProcess(freshData(), 0, args);
  hubs.push(hub);
  return hub;
}
