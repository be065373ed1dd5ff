import { expect, type Page, test } from '@playwright/test';
import { jobFileAnswer } from '#core/api/jobs-api.ts';
import { surveyIn, withSurvey } from '#ui/fitting/survey-plan.ts';
import { clippedOn } from './clipped.ts';
import { demoHub } from './demo-hub.ts';
import { doneUntil, faultsOf, keep, post, scan } from './shop-floor.ts';

const hub = demoHub();
let code: string;

test.describe.configure({ mode: 'serial', timeout: 120_000 });
/** What of the survey's sheet would have to be scrolled to. */
const beyond = (page: Page) =>
  page
    .locator('[role="dialog"] .body')
    .evaluateAll((bodies) =>
      bodies
        .filter((body) => body.scrollHeight > body.clientHeight + 1)
        .map((body) => `scrolls: ${body.scrollHeight} in ${body.clientHeight}`),
    );
test.beforeAll(async () => {
  for (const part of hub.door('ARCH-L-1').parts) await doneUntil(hub, part, 'dryfit');
  code = hub.part('ARCH-L-1', 'stile-left').code;
  for (const stage of ['dryfit', 'glue']) expect((await post(hub, code, 'assembly', stage)).status).toBe(200);
});

test('at fitting the survey of the opening is entered in one flow and says what comes off at both ends of each edge', async ({
  page,
}) => {
  await hub.open(page, 'fitting');
  await scan(page, code);
  await expect(page.locator('[data-stage="trim"]')).toBeVisible();
  await page.click('[data-action="survey"]');
  // The opening as ordered, 14 11/16 by 30 3/8, but an eighth wider at the top: a right triangle each side of it.
  const measures = {
    widthBottom: '14 11/16',
    widthTop: '14 13/16',
    heightLeft: '30 3/8',
    heightRight: '30 3/8',
    diagonalUp: '33.79655',
    diagonalDown: '33.739553',
  };
  // One flow: what is asked for is drawn, Enter goes on to the next, on the screen's keys and on a keyboard alike.
  for (const [k, [name, text]] of Object.entries(measures).entries()) {
    await expect(page.locator('svg[data-asked]')).toHaveAttribute('data-asked', name);
    if (k === 0) await keep(page, 'fitting-asked-1280');
    if (k === 1) {
      await page.getByRole('textbox').fill('14,8125');
      await page.keyboard.press('Enter');
      await expect(page.locator('#measure-told')).toHaveText('Type a point, not a comma: 14.8125.');
      await page.getByRole('button', { name: 'Clear' }).click();
    }
    if (k % 2 === 0) {
      for (const key of text) await page.click(`[data-key="${key}"]`);
      await page.click('[data-key="enter"]');
    } else {
      await page.getByRole('textbox').fill(text);
      await page.keyboard.press('Enter');
    }
  }
  const off = (edge: string, end: string) =>
    page.locator(`[data-place="${edge}-${end}"]`).last().getAttribute('data-value').then(Number);
  await expect(page.locator('[data-place="left-top"]').last()).toBeVisible();
  await expect(page.locator('[data-closure]')).toHaveAttribute('data-good', 'true');
  await expect(page.locator('[data-closure]')).toContainText('“height, right” differs by less than 1/64');
  // Hinged left: that side is straight. The opening widens upwards, so on the right less comes off at the top.
  expect(await off('left', 'bottom')).toBeCloseTo(await off('left', 'top'), 4);
  expect((await off('right', 'bottom')) - (await off('right', 'top'))).toBeCloseTo(0.125, 2);
  await keep(page, 'fitting-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.click('[data-action="save-survey"]');
  await expect(page.locator('[data-said="survey"]')).toContainText('Saved in the job');
  const kept: unknown = await (await fetch(`${hub.url}/api/jobs/${hub.plan.id}/file`)).json();
  expect(JSON.stringify(kept)).toContain('"widthTop":"14 13/16"');
  const surveyed: Record<string, string | null> = {};
  for (const [edge, ends] of Object.entries({
    left: ['bottom', 'top'],
    right: ['bottom', 'top'],
    bottom: ['left', 'right'],
    top: ['left', 'right'],
  }))
    for (const end of ends)
      surveyed[`${edge}-${end}`] = await page
        .locator(`[data-place="${edge}-${end}"]`)
        .last()
        .getAttribute('data-value');
  await page.click('[data-action="close-sheet"]');
  // The set-up shows the survey’s amounts in place of those of a square opening: at once, and when the door is scanned again.
  const trimmed = async () => {
    await expect(page.locator('[data-setting="takeOff"]')).toHaveCount(8);
    for (const [place, value] of Object.entries(surveyed))
      await expect(page.locator(`[data-setting="takeOff"][data-place="${place}"]`)).toHaveAttribute(
        'data-value',
        value ?? '',
      );
    await expect(page.locator('[data-setting="trimEachSide"], [data-setting="finishedWidth"]')).toHaveCount(
      0,
    );
    await expect(page.locator('[data-setting="horn"]')).toHaveCount(1);
    await expect(page.locator('svg [data-role="trim-to"]')).toHaveCount(1);
  };
  await trimmed();
  const tall = await page
    .locator('[data-setting="takeOff"] .value')
    .first()
    .evaluate((value) => Number.parseFloat(getComputedStyle(value).fontSize));
  const other = await page
    .locator('[data-setting="horn"] .value')
    .evaluate((value) => Number.parseFloat(getComputedStyle(value).fontSize));
  expect(tall).toBe(other);
  await keep(page, 'fitting-trim-1280');
  expect(await faultsOf(page)).toEqual([]);
  await page.click('[data-action="close"]');
  await scan(page, code);
  await trimmed();
  await page.click('[data-setting="takeOff"][data-place="right-top"] button');
  await expect(page.locator('.why')).toContainText('Right edge as built, at its top');
  await page.locator('.why button').click();
  await page.click('[data-action="done"]');
  await expect(page.getByRole('status')).toContainText('Nothing more');
});

test('one mistyped diagonal blames no side: each of the six says what it would be, whole at every size and length of words', async ({
  page,
}) => {
  expect((await post(hub, code, 'fitting', 'trim', 'undo')).status).toBe(200);
  const measures = ['14 11/16', '14 13/16', '30 3/8', '30 3/8', '33.79655', '32.739553'];
  for (const language of ['en', 'pseudo'])
    for (const [width, height] of [
      [1280, 800],
      [1920, 1080],
    ] as const) {
      await page.setViewportSize({ width, height });
      await page.goto(`${hub.url}/station/fitting?language=${language}`);
      await expect(page.locator('[data-loaded="true"]')).toBeVisible();
      await scan(page, code);
      await page.click('[data-action="survey"]');
      for (const [k, text] of measures.entries()) {
        await page.locator('[data-measure]').nth(k).click();
        await page.getByRole('textbox').fill(text);
        await page.keyboard.press('Enter');
      }
      await expect(page.locator('[data-good="false"]')).toBeVisible();
      await expect(page.locator('[data-misfit]')).toHaveCount(6);
      await expect(page.locator('[data-misfit="diagonalDown"]')).toContainText('33 47/64');
      await expect(page.locator('[role="dialog"] [data-place]')).toHaveCount(0);
      await keep(page, `fitting-misfit-${language}-${width}`);
      expect([...(await clippedOn(page)), ...(await beyond(page))], `${language} ${width}`).toEqual([]);
      expect(await faultsOf(page), `${language} ${width}`).toEqual([]);
      await page.click('[data-action="all-the-same"]');
      await expect(page.locator('[data-place="left-top"]').last()).toBeVisible();
      expect(await clippedOn(page), `${language} ${width}, all the same`).toEqual([]);
    }
  await page.goto(`${hub.url}/station/fitting?language=en`);
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await scan(page, code);
  await page.click('[data-action="survey"]');
  for (const [k, text] of measures.entries()) {
    await page.locator('[data-measure]').nth(k).click();
    await page.getByRole('textbox').fill(text);
    await page.keyboard.press('Enter');
  }
  await page.click('[data-misfit="diagonalDown"]');
  await expect(page.locator('svg[data-asked]')).toHaveAttribute('data-asked', 'diagonalDown');
  await page.getByRole('textbox').fill('33.739553');
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-good="true"]')).toBeVisible();
  // Put away before it was saved, the survey is taken up where it was.
  await page.click('[data-action="close-sheet"]');
  await page.click('[data-action="survey"]');
  await expect(page.locator('[data-good="true"]')).toBeVisible();
  await expect(page.locator('[data-measure="diagonalDown"]')).toContainText('33.739553');
});

test('nothing of the survey is cut off or to be scrolled to while it is asked for, mistyped, done or asked why', async ({
  page,
}) => {
  const good = ['14 11/16', '14 13/16', '30 3/8', '30 3/8', '33.79655', '33.739553'];
  for (const language of ['pseudo', 'en'])
    for (const [width, height] of [
      [1280, 800],
      [1920, 1080],
    ] as const) {
      const where = `${language} ${width}`;
      const whole = async (step: string) => {
        await keep(page, `fitting-${step}-${language}-${width}`);
        expect([...(await clippedOn(page)), ...(await beyond(page))], `${where}, ${step}`).toEqual([]);
      };
      await page.setViewportSize({ width, height });
      await page.goto(`${hub.url}/station/fitting?language=${language}`);
      await expect(page.locator('[data-loaded="true"]')).toBeVisible();
      await scan(page, code);
      await expect(page.locator('main[data-code]')).toBeVisible();
      expect(await clippedOn(page), `${where}, setup`).toEqual([]);
      await page.click('[data-action="survey"]');
      for (const [k, text] of good.entries()) {
        await page.locator('[data-measure]').nth(k).click();
        await page.getByRole('textbox').fill('1000,123456789');
        await page.keyboard.press('Enter');
        await expect(page.locator('#measure-told')).not.toBeEmpty();
        await whole(`asked-${k}`);
        await page.getByRole('textbox').fill(text);
        await page.keyboard.press('Enter');
      }
      await expect(page.locator('[role="dialog"] [data-place="left-top"]')).toBeVisible();
      await whole('done');
      await page.locator('[role="dialog"] [data-place="left-top"] button').click();
      await expect(page.locator('.why')).toBeVisible();
      expect(await clippedOn(page), `${where}, why`).toEqual([]);
      await page.locator('.why button').last().click();
    }
});

test('where the opening is wider than the door, the set-up says not to trim, and where, in sight and whole', async ({
  page,
}) => {
  const address = `${hub.url}/api/jobs/${hub.plan.id}`;
  const held = jobFileAnswer.parse(await (await fetch(`${address}/file`)).json());
  const whose = { door: 'ARCH-L-1', mark: 'ARCH-L', measured: {} };
  const survey = {
    widthBottom: '15',
    widthTop: '15',
    heightLeft: '30 3/8',
    heightRight: '30 3/8',
    diagonalUp: '33.876846',
    diagonalDown: '33.876846',
  };
  const saved = await fetch(address, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      revision: held.revision,
      ...withSurvey(held.file, whose, surveyIn({ doors: [{ mark: 'ARCH-L', survey }] }, whose)),
    }),
  });
  expect(saved.status).toBe(200);
  await hub.open(page, 'fitting');
  await scan(page, code);
  // Built 14 11/16 wide; the opening less two reveals of 1/16 is 14 7/8: 3/32 is missing on either side.
  await expect(page.locator('[data-message="does-not-cover"]')).toContainText('Do not trim');
  await expect(page.locator('[data-place="left-top"]')).toHaveAttribute('data-value', /^-0\.09375\d$/);
  await expect(page.locator('[data-place="left-top"]')).toContainText('3/32');
  await expect(page.locator('[data-place="top-left"]')).toHaveAttribute('data-value', /^0\.0625\d\d$/);
  await keep(page, 'fitting-gap-1280');
  expect([...(await faultsOf(page)), ...(await clippedOn(page))]).toEqual([]);
});
