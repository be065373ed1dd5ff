import { expect, type Page, test } from '@playwright/test';
import { clippedOn } from './clipped.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { fingerOn } from './finger.ts';
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

/** With so long a press the browser means a menu. */
const LONG_PRESS_MS = 500;

/** Whether each menu that the browser asks for is held off by the page, or would open. */
async function menusOf(page: Page): Promise<() => Promise<string[]>> {
  await page.evaluate(() => {
    const asked: string[] = [];
    Object.assign(window, { asked });
    window.addEventListener('contextmenu', (event) => asked.push(event.defaultPrevented ? 'held' : 'open'));
  });
  return () => page.evaluate(() => (window as unknown as { asked: string[] }).asked);
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
  await keys.locator('[data-key="3"]').tap();
  await expect(field).toHaveValue('1/43');
});

test('two quick taps on a field, however quick, type no letter; a tap after them types one', async ({
  page,
}) => {
  await newJob(page);
  const field = page.locator('[name="defaults.tenon.innerSetback"]');
  const keys = page.locator('[data-screen-keys="length"]');
  const typed: Record<number, string> = {};
  for (let round = 0; round < 12; round += 1) {
    await field.evaluate((input) => input.scrollIntoView({ block: 'end' }));
    const box = await field.boundingBox();
    if (box === null) throw new Error('the field is not shown');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const late = 10 + round * 24;
    await page.touchscreen.tap(x, y);
    await page.waitForTimeout(late);
    await page.touchscreen.tap(x, y);
    // The second one fell on the keys.
    expect((await keys.boundingBox())?.y ?? 800).toBeLessThan(y);
    typed[late] = await field.inputValue();
    if (round < 11) await keys.locator('[data-key="close-keys"]').tap();
  }
  expect([...new Set(Object.values(typed))], JSON.stringify(typed)).toEqual(['1/4']);
  await keys.locator('[data-key="3"]').tap();
  await expect(field).toHaveValue('1/43');
});

for (const held of [250, 800, 1500])
  test(`a finger held down on a field for ${held} ms opens no menu and types nothing; the keys come when it is lifted`, async ({
    page,
  }) => {
    await newJob(page);
    const field = page.locator('[name="defaults.tenon.innerSetback"]');
    await field.evaluate((input) => input.scrollIntoView({ block: 'end' }));
    const menus = await menusOf(page);
    const lift = await fingerOn(page, field);
    await page.waitForTimeout(held);
    await expect(page.locator('[data-screen-keys]')).toHaveCount(0);
    lift();
    await expect(page.locator('[data-screen-keys="length"]')).toBeVisible();
    await expect(field).toBeFocused();
    await expect(field).toHaveValue('1/4');
    // On a busy machine the shortest may be a long press too.
    if (held > LONG_PRESS_MS) expect(await menus()).toEqual(['held']);
    expect(await menus()).not.toContain('open');
  });

test('a finger held down on the due date opens its calendar, and no keys', async ({ page }) => {
  await newJob(page);
  const field = page.locator('[name="due"]');
  const menus = await menusOf(page);
  const lift = await fingerOn(page, field);
  await page.waitForTimeout(800);
  await expect(page.locator('[data-calendar]')).toHaveCount(0);
  lift();
  await expect(page.locator('[data-calendar]')).toBeVisible();
  await expect(page.locator('[data-screen-keys]')).toHaveCount(0);
  expect(await menus()).toEqual(['held']);
});

test('the due date is chosen with three taps, none of its buttons cut or small, and a wrong one is told below it', async ({
  page,
}) => {
  await newJob(page);
  const field = page.locator('[name="due"]');
  const calendar = page.locator('[data-calendar]');
  await field.tap();
  await expect(calendar.locator('[aria-current="date"]')).toHaveCount(1);
  await expect(page.locator('[data-screen-keys]')).toHaveCount(0);
  await expect(calendar).toBeInViewport({ ratio: 1 });
  await keep(page, 'office-due-1280');
  expect([...(await faultsOf(page)), ...(await clippedOn(page))]).toEqual([]);
  await calendar.locator('[data-action="next-month"]').tap();
  const day = calendar.locator('[data-day$="-18"]');
  const name = (await day.getAttribute('aria-label')) ?? '';
  await day.tap();
  await expect(calendar).toHaveCount(0);
  // "Friday, December 18, 2026" is shown as "Fri, Dec 18, 2026".
  await expect(field).toHaveValue(name.replace(/^(\w{3})\w*, (\w{3})\w*/, '$1, $2'));

  await field.tap();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('2/30/2027');
  await page.keyboard.press('Enter');
  await expect(calendar).toHaveCount(0);
  await field.blur();
  await expect(page.locator('[data-told="due"]')).toHaveText('That date does not exist.');
  await field.tap();
  await calendar.locator('[data-action="no-date"]').tap();
  await expect(page.locator('[data-told="due"]')).toHaveCount(0);
  await expect(field).toHaveValue('');
});

test('a job whose name has spaces and umlauts is changed and saved again', async ({ page }) => {
  await newJob(page);
  await page.fill('[name="job"]', 'Küche & Flur, großer Schrank');
  await page.fill('[name="mark"]', 'K1');
  await page.fill('[name="width"]', '16-1/2"');
  await page.fill('[name="height"]', '28');
  await page.click('[data-action="save-job"]');
  await expect(page.locator('.notice')).toContainText('Küche & Flur, großer Schrank');
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

test('what is wrong is told under its own field in the shop’s words, and looks like no focus', async ({
  page,
}) => {
  await newJob(page);
  await expect(page.locator('[aria-invalid="true"]')).toHaveCount(0);
  await page.click('[data-action="save-job"]');
  await expect(page.locator('[data-told]')).toHaveText([
    'Still empty.',
    'Still empty.',
    'Still empty.',
    'Still empty.',
  ]);
  await expect(page.locator('[name="job"]')).toBeFocused();
  await page.fill('[name="job"]', 'Cloakroom');
  await page.fill('[name="mark"]', 'C1');
  await page.fill('[name="width"]', '2');
  await page.fill('[name="height"]', '28');
  await page.locator('[name="height"]').blur();
  await expect(page.locator('[data-told="width"]')).toContainText('the stiles of 2 1/4 leave');
  await expect(page.locator('[name="height"]')).toHaveAttribute('aria-invalid', 'false');
  await expect(page.getByRole('alert')).toContainText('C1 · Opening width');
  expect(await page.getByRole('alert').textContent()).not.toMatch(/doors\[|opening\./);
  const look = (name: string) =>
    page.locator(`[name="${name}"]`).evaluate((field) => {
      const { outlineColor, outlineStyle, borderLeftWidth, borderLeftColor } = getComputedStyle(field);
      return {
        ring: outlineStyle === 'none' ? null : outlineColor,
        left: borderLeftWidth,
        edge: borderLeftColor,
      };
    });
  expect(await look('width')).toEqual({ ring: null, left: '14px', edge: 'rgb(153, 32, 27)' });
  await page.locator('[name="height"]').focus();
  expect(await look('height')).toEqual({ ring: 'rgb(17, 17, 17)', left: '2px', edge: 'rgb(17, 17, 17)' });
  await page.fill('[name="width"]', '16-1/2"');
  await expect(page.locator('[aria-invalid="true"]')).toHaveCount(0);
  await page.fill('[name="defaults.bead"]', '0,1');
  await page.locator('[name="defaults.bead"]').blur();
  await expect(page.locator('[data-told="defaults.bead"]')).toHaveText('Type a point, not a comma: 0.1.');
  await keep(page, 'office-form-told-1280');
  expect(await faultsOf(page)).toEqual([]);
});

test('a low door is drawn while its height is half typed, saved, and opened again, with its danger said first', async ({
  page,
}) => {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(String(error)));
  await newJob(page);
  await page.fill('[name="job"]', 'Plinth');
  await page.fill('[name="mark"]', 'LOW');
  await page.fill('[name="width"]', '12');
  for (const height of ['1', '11', '9']) {
    await page.fill('[name="height"]', height);
    await expect(page.locator('.preview h2')).toBeVisible();
  }
  const first = page.locator('.preview [data-note]').first();
  await expect(first).toHaveAttribute('data-rank', 'danger');
  await expect(first).toContainText('never hand-feed');
  await first.getByRole('button').click();
  // A rail, a stile and the panel.
  await expect(first.locator('li')).toHaveCount(3);
  await keep(page, 'office-low-door-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.click('[data-action="save-job"]');
  await expect(page.locator('.notice')).toContainText('Plinth');
  await expect(page.locator('.paper [data-note="short-piece"]')).toBeVisible();
  await page.click('[data-action="edit-job"] >> nth=-1');
  await expect(page.locator('[name="height"]')).toHaveValue('9');
  expect(errors).toEqual([]);
});

test('hinges, mid rails and the panel’s species are asked for, explained, and stand in the job', async ({
  page,
}) => {
  await newJob(page);
  await page.click('[data-action="explain-form"]');
  await expect(page.locator('[data-explained]')).toContainText('Seen from the front');
  await page.fill('[name="job"]', 'Larder');
  await page.fill('[name="mark"]', 'L1');
  await page.fill('[name="width"]', '16');
  await page.fill('[name="height"]', '40');
  await page.selectOption('[name="hinge"]', 'right');
  await page.selectOption('[name="species"]', 'ash, white');
  await page.click('[data-action="add-rail"]');
  await page.fill('[name="rail-width"]', '3');
  await page.fill('[name="rail-centre"]', '20');
  await expect(page.locator('.preview svg [data-role="rail-mid-1"]')).toHaveCount(1);
  await keep(page, 'office-form-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.click('[data-action="save-job"]');
  await expect(page.locator('.notice')).toContainText('Larder');
  const file: unknown = await (await fetch(`${hub.url}/api/jobs/Larder/file`)).json();
  expect(file).toMatchObject({
    file: {
      doors: [
        {
          mark: 'L1',
          hinge: 'right',
          panel: { species: 'ash, white' },
          midRails: [{ width: '3', centre: '20' }],
        },
      ],
    },
  });
});

test('a filled row, changes and other units are asked about before anything is lost', async ({ page }) => {
  await newJob(page);
  await page.click('[data-action="add-row"]');
  await page.locator('[data-action="remove-row"]').last().click();
  await expect(page.locator('[data-question]')).toHaveCount(0);
  await expect(page.locator('[data-row]')).toHaveCount(1);
  await page.fill('[name="job"]', 'Porch');
  await page.fill('[name="mark"]', 'P1');
  await page.fill('[name="width"]', '16 1/2');
  await page.fill('[name="height"]', '30');
  await page.click('[data-action="add-row"]');
  await page.locator('[name="mark"]').last().fill('P2');
  await page.locator('[data-action="remove-row"]').last().click();
  await expect(page.locator('[data-question]')).toContainText('Remove P2');
  expect(await faultsOf(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(page.locator('[data-row]')).toHaveCount(2);
  await page.locator('[data-action="remove-row"]').last().click();
  await page.click('[data-answer="remove"]');
  await expect(page.locator('[data-row]')).toHaveCount(1);

  await page.selectOption('[name="units"]', 'mm');
  await expect(page.locator('[data-question]')).toContainText('From inches to millimeters');
  await keep(page, 'office-question-1280');
  await page.click('[data-answer="stay"]');
  await expect(page.locator('[name="units"]')).toHaveValue('in');
  await expect(page.locator('[name="width"]')).toHaveValue('16 1/2');
  await page.selectOption('[name="units"]', 'mm');
  await page.click('[data-answer="convert"]');
  await expect(page.locator('[name="width"]')).toHaveValue('419.1');
  await expect(page.locator('[name="defaults.thickness"]')).toHaveValue('19.05');
  await page.selectOption('[name="units"]', 'in');
  await page.click('[data-answer="keep"]');
  await expect(page.locator('[name="units"]')).toHaveValue('in');
  await expect(page.locator('[name="width"]')).toHaveValue('419.1');

  for (const leave of ['[data-action="close-form"]', '[data-page="shop"]']) {
    await page.click(leave);
    await expect(page.locator('[data-question]')).toContainText('Discard your changes to Porch?');
    await page.click('[data-answer="stay"]');
    await expect(page.locator('[name="job"]')).toHaveValue('Porch');
  }
  await page.click('[data-action="close-form"]');
  await page.click('[data-answer="drop"]');
  await expect(page.locator('[data-action="new-job"]')).toBeVisible();
});

test('the door that is typed stays drawn beside its row, with the keys up and another row unfinished; a door has its own bead', async ({
  page,
}) => {
  await newJob(page);
  await page.fill('[name="job"]', 'Larch loft');
  for (const [k, mark] of ['A', 'B', 'C', 'D'].entries()) {
    if (k > 0) await page.click('[data-action="add-row"]');
    await page.locator('[name="mark"]').nth(k).fill(mark);
    await page.locator('[name="width"]').nth(k).fill('16');
    if (mark !== 'B')
      await page
        .locator('[name="height"]')
        .nth(k)
        .fill(mark === 'C' ? '12' : '30');
  }
  await page.locator('[name="width"]').nth(2).tap();
  await expect(page.locator('[data-screen-keys="length"]')).toBeVisible();
  const tops = await page
    .locator('[data-screen-keys] [data-key]:not([data-key="close-keys"])')
    .evaluateAll((keys) => keys.map((key) => Math.round(key.getBoundingClientRect().top)));
  expect(new Set(tops).size).toBe(1);
  await expect(page.locator('.preview h2')).toHaveText('The door drawn: C');
  const picture = page.locator('.preview .picture').first();
  await expect(picture).toBeInViewport({ ratio: 1 });
  await expect(page.locator('.preview')).toContainText('carrier');
  await keep(page, 'office-form-sticky-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.locator('[name="width"]').nth(1).tap();
  await expect(page.locator('.preview')).toContainText('B is drawn as soon as its row is finished.');
  await page.click('[data-key="close-keys"]');

  await page.locator('[data-row="3"] [data-action="more-for-door"]').click();
  await page.fill('[data-row="3"] [name="bead"]', '0');
  await page.fill('[data-row="3"] [name="stile.width"]', '2');
  await expect(page.locator('.preview h2')).toHaveText('The door drawn: D');
  await keep(page, 'office-form-more-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.locator('[name="height"]').nth(1).fill('28');
  await page.click('[data-action="save-job"]');
  await expect(page.locator('.notice')).toContainText('Larch loft');
  await keep(page, 'office-file-button-1280');
  const { file } = (await (await fetch(`${hub.url}/api/jobs/Larch%20loft/file`)).json()) as { file: object };
  expect(file).toMatchObject({ doors: [{}, {}, {}, { bead: '0', stile: { width: '2' } }] });
  await page.click('[data-page="shop"]');
  await expect(page.locator('.notice')).toHaveCount(0);
});

test('a slender door is drawn as high as the form’s pane, and its name can be read', async ({ page }) => {
  await newJob(page);
  await page.fill('[name="job"]', 'Broom closet');
  await page.fill('[name="mark"]', 'BROOM');
  await page.fill('[name="width"]', '13 3/8');
  await page.fill('[name="height"]', '58 1/2');
  for (const [width, height] of [
    [1920, 1080],
    [1280, 800],
  ] as const) {
    await page.setViewportSize({ width, height });
    await expect(page.locator('.preview h2')).toHaveText('The door drawn: BROOM');
    // The picture follows what is typed, and the window, a moment later.
    await expect(async () => {
      const drawn = await page
        .locator('.preview .picture')
        .first()
        .evaluate((picture) => {
          const tall = (role: string) =>
            picture.querySelector(`[data-role="${role}"]`)?.getBoundingClientRect().height ?? 0;
          const name = picture.querySelector('[data-role="door-name"]');
          return {
            room: picture.clientHeight,
            stile: tall('stile-left'),
            name: Number(name?.getAttribute('font-size')),
          };
        });
      expect(drawn.stile).toBeGreaterThan(height * 0.45);
      expect(drawn.stile).toBeGreaterThan(drawn.room * 0.65);
      expect(drawn.name).toBeGreaterThanOrEqual(18);
    }).toPass({ timeout: 10_000 });
    await keep(page, `office-form-slender-${width}`);
  }
});
