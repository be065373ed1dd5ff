import { expect, type Page, test } from '@playwright/test';
import { stageName } from '#core/telling/names.ts';
import { demoHub } from './demo-hub.ts';
import { faultsOf, keep, post, scan } from './shop-floor.ts';

const hub = demoHub();

test.describe.configure({ mode: 'serial' });

async function allDone(door: string): Promise<void> {
  for (const { code, stages } of hub.door(door).parts)
    for (const { stage, station } of stages) expect((await post(hub, code, station, stage)).status).toBe(200);
}
async function sound(page: Page, name: string): Promise<void> {
  expect(await faultsOf(page), name).toEqual([]);
}

test('the queue groups what is set alike, and after a part is done its group comes first', async ({
  page,
}) => {
  await hub.open(page, 'milling');
  const first = page.locator('[data-group="0"]');
  await expect(first).toHaveAttribute('data-left', '6');
  await expect(first).toContainText('BENCH-1');
  await keep(page, 'queue-1280');
  await sound(page, 'queue');
  const stile = hub.part('LOCKER-1', 'stile-left');
  await scan(page, stile.code);
  await expect(page.locator('[data-asked="proved"]')).toContainText('before the first part');
  await keep(page, 'proved-asked-1280');
  await sound(page, 'proved?');
  await page.click('[data-action="not-yet"]');
  await expect(page.locator('[data-asked="proved"]')).toHaveCount(0);
  await expect(page.locator('[data-proved="no"]')).toContainText('Not proved yet');
  await page.click('[data-action="done"]');
  await expect(page.getByRole('status')).toContainText(': done');
  await keep(page, 'queue-after-1280');
  await sound(page, 'queue after a mark');
  await expect(page.getByRole('button', { name: 'Board' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeVisible();
  await expect(first).toContainText('LOCKER-1 Right stile');
  await expect(first).toContainText('Set already');
  await expect(first).toContainText('not proved yet');
  await expect(first).toHaveAttribute('data-left', '3');
});

test('a proved set-up is asked for, recorded with who proved it, and counts for every part set alike', async ({
  page,
}) => {
  await hub.open(page, 'milling');
  await scan(page, 'P-WREN');
  await expect(page.locator('[data-message="badge"]')).toContainText('WREN');
  await scan(page, hub.part('BENCH-1', 'stile-left').code);
  await expect(page.locator('[data-proved="no"]')).toBeVisible();
  await keep(page, 'setup-milling-1280');
  await sound(page, 'setup');
  await page.click('[data-action="proved"]');
  await expect(page.locator('[data-proved="yes"]')).toContainText('by WREN');
  await keep(page, 'setup-proved-1280');
  await page.click('[data-action="close"]');
  await scan(page, hub.part('BENCH-2', 'stile-right').code);
  await expect(page.locator('[data-proved="yes"]')).toContainText('by WREN');
  await page.click('[data-action="done"]');
  await expect(page.getByRole('status')).toContainText(': done');
  const { parts } = await hub.progress();
  expect(parts[hub.part('BENCH-2', 'stile-right').code]?.done.mill?.by).toBe('P-WREN');
});

test('a person is chosen by a tap on one who was here before, and signed off by another', async ({
  page,
}) => {
  await hub.open(page, 'bench');
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
  await hub.open(page, 'milling');
  await page.click('[data-action="find"]');
  await sound(page, 'find');
  await page.click('[data-find-door="KEYS-1"]');
  await keep(page, 'find-1280');
  await page.click('[data-find-part="rail-bottom"]');
  await expect(page.locator(`[data-code="${hub.part('KEYS-1', 'rail-bottom').code}"]`)).toBeVisible();
});

test('a spoiled blank gets a replacement with its own code, and its old sticker says so', async ({
  page,
}) => {
  const rail = hub.part('BENCH-3', 'rail-bottom');
  await hub.open(page, 'milling');
  await scan(page, rail.code);
  await page.click('[data-action="spoil"]');
  await sound(page, 'spoil');
  await page.click('[data-reason="split"]');
  await expect(page.getByRole('dialog')).toContainText('Scrap this part? Bottom rail of BENCH-3.');
  await keep(page, 'give-up-1280');
  await sound(page, 'give up');
  await page.click('[data-action="give-up"]');
  await expect(page.locator('[data-message="replacement"]')).toBeVisible();
  await keep(page, 'replacement-1280');
  const { parts } = await hub.progress();
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
  const [one, ...rest] = hub.door('ARCH-L-1').parts;
  if (one === undefined) throw new Error('no parts');
  await hub.open(page, 'assembly');
  await scan(page, one.code);
  const gathering = page.locator('[data-gathering="ARCH-L-1"]');
  await expect(gathering).toContainText(`1 of ${rest.length + 1} here`);
  await scan(page, hub.part('ARCH-R-1', 'stile-left').code);
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
  await expect(page.getByRole('status')).toContainText('at fitting');
  expect(Object.keys((await hub.progress()).doors['ARCH-L-1']?.done ?? {})).toEqual(['dryfit', 'glue']);
});

test('cut off from the hub a station says so, keeps marks over a reload, and they are sent once each in order', async ({
  page,
}) => {
  const rail = hub.part('BROOM-1', 'rail-top');
  await hub.open(page, 'milling');
  const before = (await hub.progress()).seq;
  await hub.end('SIGKILL');
  const cut = Date.now();
  await expect(page.locator('[data-message="hub-away"]')).toBeVisible({ timeout: 3000 });
  expect(Date.now() - cut).toBeLessThan(3000);
  await scan(page, rail.code);
  await expect(page.locator('[data-stage="mill"]')).toBeVisible();
  await page.click('[data-action="done"]');
  await expect(page.getByRole('status')).toContainText('kept here until the shop computer is back');
  await page.click('[data-action="undo"]');
  await expect(page.locator('[data-message="undone"]')).toBeVisible();
  await scan(page, rail.code);
  await page.click('[data-action="done"]');
  await expect(page.locator('[data-message="hub-away"]')).toHaveAttribute('data-kept', '3');
  await scan(page, rail.code);
  await expect(page.locator('[data-message="wrong-station"], [data-message="already-done"]')).toBeVisible();
  await keep(page, 'away-1280');
  await page.goto('about:blank');
  await hub.again();
  await page.goto(`${hub.url}/station/milling`);
  await expect.poll(async () => (await hub.progress()).seq).toBe(before + 3);
  expect((await hub.progress()).parts[rail.code]?.done.mill).toBeDefined();
  await page.reload();
  await page.waitForTimeout(1500);
  expect((await hub.progress()).seq).toBe(before + 3);
});

test('a kept mark that the hub refuses is shown with what stands on it, and a person settles it', async ({
  page,
}) => {
  const rail = hub.part('KEYS-1', 'rail-bottom');
  expect((await post(hub, rail.code, 'milling', 'mill')).status).toBe(200);
  expect((await post(hub, rail.code, 'router-table', 'bead')).status).toBe(200);
  await hub.open(page, 'table-saw');
  await hub.end('SIGTERM');
  await expect(page.locator('[data-message="hub-away"]')).toBeVisible({ timeout: 4000 });
  for (const stage of ['groove', 'shoulder']) {
    await scan(page, rail.code);
    await expect(page.locator(`[data-stage="${stage}"]`)).toBeVisible();
    await page.click('[data-action="done"]');
    await expect(page.getByRole('status')).toContainText('kept here');
  }
  await page.goto('about:blank');
  await hub.again();
  expect((await post(hub, rail.code, 'table-saw', 'groove')).status).toBe(200);
  await page.goto(`${hub.url}/station/table-saw`);
  const refused = page.locator('[data-message="already-done"]');
  await expect(refused).toContainText('KEYS-1');
  // Its name, what is wrong and both answers stand in one block, whole and close together, at either size.
  for (const size of [
    { width: 1920, height: 1080 },
    { width: 1280, height: 800 },
  ]) {
    await page.setViewportSize(size);
    const block = refused.locator('[data-decide]');
    await expect(block).toBeInViewport({ ratio: 1 });
    await expect(block).toContainText('KEYS-1');
    await expect(block.locator('button')).toHaveCount(2);
    const gaps = await block.evaluate((box) => {
      const boxes = [...box.children].map((each) => each.getBoundingClientRect());
      return boxes.slice(1).map(({ top }, k) => top - (boxes[k]?.bottom ?? NaN));
    });
    expect(Math.max(...gaps)).toBeLessThanOrEqual(24);
  }
  await expect(refused).toContainText('Also removes a later record');
  await expect(refused).toContainText(`Done already: ${stageName('groove')}.`);
  await keep(page, 'refused-1280');
  await sound(page, 'refused');
  await page.click('[data-action="throw-away"]');
  await expect(refused).toHaveCount(0);
  expect(Object.keys((await hub.progress()).parts[rail.code]?.done ?? {})).toEqual([
    'mill',
    'bead',
    'groove',
  ]);
});
