import AxeBuilder from '@axe-core/playwright';
import { expect, type Page, test } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import { jobProgress } from '#core/api/marks-api.ts';
import type { JobProgress } from '#core/marks/mark.ts';
import type { Plan, PlanDoor, PlanPart } from '#core/plan/plan.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';

let hub: HubProcess;
let plan: Plan;
const data = freshData();

test.describe.configure({ mode: 'serial' });
test.beforeAll(async () => {
  hub = await startHubProcess(data, 0, ['--demo']);
  const list = (await (await fetch(`${hub.url}/api/jobs`)).json()) as { jobs: { id: string }[] };
  plan = (await (await fetch(`${hub.url}/api/jobs/${list.jobs[0]?.id ?? ''}`)).json()) as Plan;
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
});

function door(name: string): PlanDoor {
  const found = plan.doors.find((each) => each.door === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
}
function part(doorName: string, name: string): PlanPart {
  const found = door(doorName).parts.find((each) => each.part === name);
  if (found === undefined) throw new Error(`no ${name} in ${doorName}`);
  return found;
}
async function post(code: string, station: string, stage: string, mark = 'done'): Promise<Response> {
  return fetch(`${hub.url}/api/marks`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ id: randomUUID(), code, station, stage, mark, at: new Date().toISOString() }),
  });
}
async function allDone(doorName: string): Promise<void> {
  for (const { code, stages } of door(doorName).parts)
    for (const { stage, station } of stages) expect((await post(code, station, stage)).status).toBe(200);
}
async function progress(): Promise<JobProgress> {
  const answer: unknown = await (await fetch(`${hub.url}/api/jobs/${plan.id}/progress`)).json();
  return jobProgress.parse(answer) as JobProgress;
}
/** A burst: the keys are sent without waiting for one another, as fast as a scanner's whatever else the machine does. */
async function scan(page: Page, code: string): Promise<void> {
  await Promise.all([...code, 'Enter'].map((key) => page.keyboard.press(key)));
}
/** Keeps a picture of a screen to be looked at, when asked to: KEEP_SCREENS=1. */
async function keep(page: Page, name: string): Promise<void> {
  if (process.env.KEEP_SCREENS !== undefined) await page.screenshot({ path: `test/e2e/screens/${name}.png` });
}
async function openStation(page: Page, station: string): Promise<void> {
  await page.goto(`${hub.url}/station/${station}`);
  await expect(page.locator('h3')).toContainText('Waiting at this station (');
  await page.waitForTimeout(300);
}
/** Nothing scrolls, every target is at least 64 px high and wide, and axe finds nothing. */
async function sound(page: Page, name: string): Promise<void> {
  const faults = await page.evaluate(() => {
    const found: string[] = [];
    const root = document.documentElement;
    if (root.scrollHeight > innerHeight + 1 || root.scrollWidth > innerWidth + 1) found.push('scrolls');
    for (const button of document.querySelectorAll('button')) {
      const { width, height } = button.getBoundingClientRect();
      if (width > 0 && (width < 63.5 || height < 63.5))
        found.push(`${button.textContent.trim()} ${Math.round(width)} × ${Math.round(height)}`);
    }
    return found;
  });
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect([...faults, ...violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html ?? ''}`)], name).toEqual(
    [],
  );
}

test('the queue groups what is set alike, and after a part is done its group comes first', async ({
  page,
}) => {
  await openStation(page, 'milling');
  const first = page.locator('[data-group="0"]');
  await expect(first).toHaveAttribute('data-left', '6');
  await expect(first).toContainText('BENCH-1');
  await keep(page, 'queue-1280');
  await sound(page, 'queue');
  const stile = part('LOCKER-1', 'stile-left');
  await scan(page, stile.code);
  await page.click('[data-action="done"]');
  await expect(page.getByRole('status')).toContainText('is done');
  await keep(page, 'proved-asked-1280');
  await sound(page, 'proved?');
  await page.click('[data-action="not-yet"]');
  await keep(page, 'queue-after-1280');
  await sound(page, 'queue after a mark');
  await expect(page.getByRole('button', { name: 'Board' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Take back' })).toBeVisible();
  await expect(first).toContainText('LOCKER-1 Right stile');
  await expect(first).toContainText('Set already');
  await expect(first).toContainText('not proved yet');
  await expect(first).toHaveAttribute('data-left', '3');
});

test('a proved set-up is asked for, recorded with who proved it, and counts for every part set alike', async ({
  page,
}) => {
  await openStation(page, 'milling');
  await scan(page, 'P-WREN');
  await expect(page.locator('[data-message="badge"]')).toContainText('WREN');
  await scan(page, part('BENCH-1', 'stile-left').code);
  await expect(page.locator('[data-proved="no"]')).toBeVisible();
  await keep(page, 'setup-milling-1280');
  await sound(page, 'setup');
  await page.click('[data-action="proved"]');
  await expect(page.locator('[data-proved="yes"]')).toContainText('by WREN');
  await keep(page, 'setup-proved-1280');
  await page.click('[data-action="close"]');
  await scan(page, part('BENCH-2', 'stile-right').code);
  await expect(page.locator('[data-proved="yes"]')).toContainText('by WREN');
  await page.click('[data-action="done"]');
  await expect(page.getByRole('status')).toContainText('is done');
  const { parts } = await progress();
  expect(parts[part('BENCH-2', 'stile-right').code]?.done.mill?.by).toBe('P-WREN');
});

test('a person is chosen by a tap on one who was here before, and signed off by another', async ({
  page,
}) => {
  await openStation(page, 'bench');
  await scan(page, 'P-OTIS');
  await page.click('[data-action="people"]');
  await sound(page, 'people');
  await page.click('[data-action="sign-off"]');
  await expect(page.locator('[data-action="people"]')).toHaveText('Who works here?');
  await page.click('[data-action="people"]');
  await page.click('[data-badge="P-OTIS"]');
  await expect(page.locator('[data-action="people"]')).toHaveText('OTIS');
});

test('a part whose sticker is lost is found by its door and name', async ({ page }) => {
  await openStation(page, 'milling');
  await page.click('[data-action="find"]');
  await sound(page, 'find');
  await page.click('[data-find-door="KEYS-1"]');
  await keep(page, 'find-1280');
  await page.click('[data-find-part="rail-bottom"]');
  await expect(page.locator(`[data-code="${part('KEYS-1', 'rail-bottom').code}"]`)).toBeVisible();
});

test('a spoiled blank gets a replacement with its own code, and its old sticker says so', async ({
  page,
}) => {
  const rail = part('BENCH-3', 'rail-bottom');
  await openStation(page, 'milling');
  await scan(page, rail.code);
  await page.click('[data-action="spoil"]');
  await sound(page, 'spoil');
  await page.click('[data-reason="split"]');
  await expect(page.getByRole('dialog')).toContainText('Give up Bottom rail of BENCH-3?');
  await keep(page, 'give-up-1280');
  await sound(page, 'give up');
  await page.click('[data-action="give-up"]');
  await expect(page.locator('[data-message="replacement"]')).toBeVisible();
  await keep(page, 'replacement-1280');
  const { parts } = await progress();
  const old = parts[rail.code];
  expect(old?.spoiled).toMatchObject({ stage: 'mill', reason: 'Split or torn out' });
  const code = old?.replacedBy ?? '';
  await expect(page.locator('[data-message="replacement"]')).toContainText(code);
  await scan(page, rail.code);
  await expect(page.locator('[data-message="spoiled"]')).toContainText(code);
  await scan(page, code);
  await expect(page.locator(`[data-code="${code}"]`)).toHaveAttribute('data-stage', 'mill');
});

test('at assembly a door fills up, a part of another door is refused by name, and only a full door is fitted, then glued', async ({
  page,
}) => {
  await allDone('ARCH-L-1');
  await allDone('ARCH-R-1');
  const [one, ...rest] = door('ARCH-L-1').parts;
  if (one === undefined) throw new Error('no parts');
  await openStation(page, 'assembly');
  await scan(page, one.code);
  const gathering = page.locator('[data-gathering="ARCH-L-1"]');
  await expect(gathering).toContainText(`1 of ${rest.length + 1} here`);
  await scan(page, part('ARCH-R-1', 'stile-left').code);
  await expect(page.locator('[data-message="other-door"]')).toContainText(
    'Left stile belongs to ARCH-R-1, not to ARCH-L-1',
  );
  await page.getByRole('button', { name: 'Understood' }).click();
  for (const { code } of rest.slice(0, -1)) await scan(page, code);
  await expect(gathering.locator('[data-here="true"]')).toHaveCount(rest.length);
  await keep(page, 'assembly-1280');
  await sound(page, 'assembly');
  await expect(page.locator('[data-action="done"]')).toHaveCount(0);
  await scan(page, rest.at(-1)?.code ?? '');
  await expect(page.locator('[data-stage="dryfit"]')).toBeVisible();
  await page.click('[data-action="done"]');
  await expect(page.locator('[data-stage="glue"]')).toBeVisible();
  const done = page.locator('[data-action="done"]');
  await expect(done).toHaveAttribute('aria-disabled', 'true');
  await keep(page, 'glue-waits-1280');
  await done.dispatchEvent('click');
  await expect(page.locator('[data-stage="glue"]')).toBeVisible();
  await done.click();
  await expect(page.getByRole('status')).toContainText('Fitting');
  expect(Object.keys((await progress()).doors['ARCH-L-1']?.done ?? {})).toEqual(['dryfit', 'glue']);
});

test('cut off from the hub a station says so, keeps marks over a reload, and they are sent once each in order', async ({
  page,
}) => {
  const port = Number(new URL(hub.url).port);
  const rail = part('BROOM-1', 'rail-top');
  await openStation(page, 'milling');
  const before = (await progress()).seq;
  await hub.end('SIGKILL');
  const cut = Date.now();
  await expect(page.locator('[data-message="hub-away"]')).toBeVisible({ timeout: 3000 });
  expect(Date.now() - cut).toBeLessThan(3000);
  await scan(page, rail.code);
  await expect(page.locator('[data-stage="mill"]')).toBeVisible();
  await page.click('[data-action="done"]');
  await expect(page.getByRole('status')).toContainText('is kept here until the hub is back');
  await page.click('[data-action="undo"]');
  await expect(page.locator('[data-message="undone"]')).toBeVisible();
  await scan(page, rail.code);
  await page.click('[data-action="done"]');
  await expect(page.locator('[data-message="hub-away"]')).toHaveAttribute('data-kept', '3');
  await scan(page, rail.code);
  await expect(page.locator('[data-message="wrong-station"], [data-message="already-done"]')).toBeVisible();
  await keep(page, 'away-1280');
  await page.goto('about:blank');
  hub = await startHubProcess(data, port);
  await page.goto(`${hub.url}/station/milling`);
  await expect.poll(async () => (await progress()).seq).toBe(before + 3);
  expect((await progress()).parts[rail.code]?.done.mill).toBeDefined();
  await page.reload();
  await page.waitForTimeout(1500);
  expect((await progress()).seq).toBe(before + 3);
});

test('a kept mark that the hub refuses is shown with what stands on it, and a person settles it', async ({
  page,
}) => {
  const port = Number(new URL(hub.url).port);
  const rail = part('KEYS-1', 'rail-bottom');
  expect((await post(rail.code, 'milling', 'mill')).status).toBe(200);
  expect((await post(rail.code, 'router-table', 'bead')).status).toBe(200);
  await openStation(page, 'table-saw');
  await hub.end('SIGTERM');
  await expect(page.locator('[data-message="hub-away"]')).toBeVisible({ timeout: 4000 });
  for (const stage of ['groove', 'shoulder']) {
    await scan(page, rail.code);
    await expect(page.locator(`[data-stage="${stage}"]`)).toBeVisible();
    await page.click('[data-action="done"]');
    await expect(page.getByRole('status')).toContainText('is kept here');
  }
  await page.goto('about:blank');
  hub = await startHubProcess(data, port);
  expect((await post(rail.code, 'table-saw', 'groove')).status).toBe(200);
  await page.goto(`${hub.url}/station/table-saw`);
  const refused = page.locator('[data-message="already-done"]');
  await expect(refused).toContainText('KEYS-1');
  await expect(refused).toContainText('1 later marks');
  await keep(page, 'refused-1280');
  await sound(page, 'refused');
  await page.click('[data-action="throw-away"]');
  await expect(refused).toHaveCount(0);
  expect(Object.keys((await progress()).parts[rail.code]?.done ?? {})).toEqual(['mill', 'bead', 'groove']);
});
