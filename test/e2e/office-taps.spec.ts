import { expect, type Locator, type Page, test } from '@playwright/test';
import { clippedOn } from './clipped.ts';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { failOnErrors } from './quiet.ts';
import { faultsOf, keep } from './shop-floor.ts';

/** The office's job of eleven doors is to be typed with fewer taps than this, those on letters and figures not counted. */
const TAPS = 40;
/** Keys that have just come up, or changed, may take no press at once. */
const SETTLED = 700;

let hub: HubProcess;
const data = freshData();

test.describe.configure({ mode: 'serial', timeout: 180_000 });
failOnErrors();
test.beforeAll(async () => {
  hub = await startHubProcess(data);
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
});

/** A finger in the office: it types on the keys of the screen, and its other taps are counted. */
class Finger {
  taps = 0;
  #keys = '';
  constructor(readonly page: Page) {}

  async tap(what: Locator | string): Promise<void> {
    const target = typeof what === 'string' ? this.page.locator(what) : what;
    await target.tap();
    this.taps += 1;
  }

  /** Types with the keys that stand on the screen, into the field that has the cursor, and sees it there. */
  async type(name: string, text: string): Promise<void> {
    const field = this.page.locator('input:focus');
    await expect(field).toHaveAttribute('name', name);
    const pad = this.page.locator('[data-screen-keys]');
    const keys = (await pad.getAttribute('data-screen-keys')) ?? '';
    if (keys !== this.#keys) await this.page.waitForTimeout(SETTLED);
    this.#keys = keys;
    for (const sign of text) {
      const key = (typed: string) => pad.locator(`[data-key="${typed}"]`);
      const shift = key('upper');
      if (/[a-z]/i.test(sign) && (await shift.getAttribute('aria-pressed')) !== String(/[A-Z]/.test(sign)))
        await shift.tap();
      await key(sign.toLowerCase()).tap();
    }
    await expect(field).toHaveValue(text);
  }

  /** The key that goes on to the next field, which is then typed into. */
  async next(name: string, text: string): Promise<void> {
    await this.tap('[data-key="enter"]');
    await this.type(name, text);
  }
}

test(
  'a hallway of eleven doors in seven sizes is typed on the touch screen with fewer than 40 taps',
  { tag: '@proof' },
  async ({ page }) => {
    await page.goto(`${hub.url}/office`);
    const finger = new Finger(page);
    const last = (selector: string) => page.locator(`[data-row] >> nth=-1 >> ${selector}`);
    await finger.tap('[data-action="new-job"]');
    await finger.tap('[name="job"]');
    await finger.type('job', 'Hallway');
    // Three of a size.
    await finger.next('mark', 'A1');
    await finger.next('quantity', '3');
    await finger.next('width', '16 1/2');
    await finger.next('height', '30');
    // Two narrower ones.
    await finger.tap(last('[data-action="copy-row"]'));
    await expect(page.locator('input:focus')).toHaveValue('A2');
    await finger.next('quantity', '2');
    await finger.next('width', '14');
    // Two arched ones, and one that is wider.
    await finger.tap(last('[data-action="copy-row"]'));
    await finger.tap('[data-key="enter"]');
    await finger.next('width', '18');
    await finger.tap(last('[name="arched"]'));
    await finger.type('rise', '1 1/2');
    await finger.next('flat', '3/4');
    await finger.tap(last('[data-action="copy-row"]'));
    await finger.next('quantity', '1');
    await finger.next('width', '20');
    // A tall one with two mid rails.
    await finger.tap('[data-action="add-row"]');
    await finger.type('mark', 'B1');
    await finger.tap(last('[name="width"]'));
    await finger.type('width', '16');
    await finger.next('height', '72');
    await finger.tap(last('[data-action="add-rail"]'));
    await finger.type('rail-width', '3');
    await finger.next('rail-centre', '24');
    await finger.tap(last('[data-action="add-rail"]'));
    await finger.type('rail-centre', '48');
    // A low one.
    await finger.tap('[data-action="add-row"]');
    await finger.type('mark', 'LOW');
    await finger.tap(last('[name="width"]'));
    await finger.type('width', '12');
    await finger.next('height', '9');
    // A crooked one, built larger and fitted by its survey.
    await finger.tap('[data-action="add-row"]');
    await finger.type('mark', 'C1');
    await finger.tap(last('[name="width"]'));
    await finger.type('width', '16');
    await finger.next('height', '28');
    await finger.tap(last('[data-action="more-for-door"]'));
    await finger.type('oversize.width', '1/4');
    await finger.next('oversize.height', '1/4');
    await finger.tap(last('[name="survey.widthBottom"]'));
    await finger.type('survey.widthBottom', '16');
    await finger.next('survey.widthTop', '16 1/8');
    await finger.next('survey.heightLeft', '28');
    await finger.next('survey.heightRight', '28 1/16');
    await finger.next('survey.diagonalUp', '32 5/16');
    await finger.next('survey.diagonalDown', '32 1/4');
    await keep(page, 'office-eleven-doors-1280');
    await finger.tap('[data-action="save-job"]');
    await expect(page.locator('.notice')).toContainText('Hallway');

    const { file } = (await (await fetch(`${hub.url}/api/jobs/Hallway/file`)).json()) as { file: unknown };
    const one = { quantity: 1, hinge: 'left' };
    const arched = { arch: { rise: '1 1/2', flat: '3/4' } };
    expect((file as { doors: unknown }).doors).toEqual([
      { ...one, mark: 'A1', quantity: 3, opening: { width: '16 1/2', height: '30' } },
      { ...one, mark: 'A2', quantity: 2, opening: { width: '14', height: '30' } },
      { ...one, mark: 'A3', quantity: 2, opening: { width: '18', height: '30' }, ...arched },
      { ...one, mark: 'A4', opening: { width: '20', height: '30' }, ...arched },
      {
        ...one,
        mark: 'B1',
        opening: { width: '16', height: '72' },
        midRails: [
          { width: '3', centre: '24' },
          { width: '3', centre: '48' },
        ],
      },
      { ...one, mark: 'LOW', opening: { width: '12', height: '9' } },
      {
        ...one,
        mark: 'C1',
        opening: { width: '16', height: '28' },
        oversize: { width: '1/4', height: '1/4' },
        survey: {
          widthBottom: '16',
          widthTop: '16 1/8',
          heightLeft: '28',
          heightRight: '28 1/16',
          diagonalUp: '32 5/16',
          diagonalDown: '32 1/4',
        },
      },
    ]);
    expect(finger.taps, `${finger.taps} taps`).toBeLessThan(TAPS);
  },
);

test('Enter on a keyboard goes on from field to field, into the next row, and saves only on the button', async ({
  page,
}) => {
  await page.goto(`${hub.url}/office`);
  await page.click('[data-action="new-job"]');
  await page.locator('[name="job"]').focus();
  await page.keyboard.type('By keyboard');
  for (const text of ['K1', '', '16', '30']) {
    await page.keyboard.press('Enter');
    if (text !== '') await page.keyboard.type(text);
  }
  await page.locator('[data-action="add-row"]').press('Enter');
  // Whoever adds a door with a key gets no keys on the screen.
  await expect(page.locator('[data-row="1"] [name="mark"]')).toBeFocused();
  await expect(page.locator('[data-screen-keys]')).toHaveCount(0);
  await page.locator('[data-row="0"] [name="height"]').press('Enter');
  await expect(page.locator('[data-row="1"] [name="mark"]')).toBeFocused();
  await page.locator('[name="moisture.high"]').press('Enter');
  await expect(page.locator('[data-action="save-job"]')).toBeFocused();
  await expect(page.locator('[data-action="save-job"]')).toBeVisible();
});

test(
  'what one door has of its own stands one tap away, told under its field, and is not cut in a longer language',
  { tag: '@proof' },
  async ({ page }) => {
    for (const viewport of [
      { width: 1280, height: 800 },
      { width: 1920, height: 1080 },
    ]) {
      await page.setViewportSize(viewport);
      for (const language of ['en', 'pseudo']) {
        await page.goto(`${hub.url}/office?language=${language}`);
        await page.click('[data-action="new-job"]');
        await page.fill('[name="mark"]', 'A1');
        const more = page.locator('[data-action="more-for-door"]');
        await expect(page.locator('[data-more]')).toHaveCount(0);
        await more.tap();
        await expect(page.locator('[name="oversize.width"]')).toBeFocused();
        await expect(page.locator('[name="horn"]')).toHaveAttribute('placeholder', '1/2');
        await keep(page, `office-own-keys${language === 'en' ? '' : '-long'}-${viewport.width}`);
        expect(await clippedOn(page)).toEqual([]);
        await page.fill('[name="thickness"]', '0,8');
        await page.fill('[name="survey.widthTop"]', '16');
        await page.locator('[data-key="close-keys"]').tap();
        await page.locator('[name="mark"]').focus();
        await expect(page.locator('[data-told="thickness"]')).toBeVisible();
        await keep(page, `office-own${language === 'en' ? '' : '-long'}-${viewport.width}`);
        expect(await clippedOn(page)).toEqual([]);
        if (language === 'en') expect(await faultsOf(page)).toEqual([]);
        await page.fill('[name="thickness"]', '7/8');
        await more.tap();
        await expect(page.locator('[data-more]')).toHaveCount(0);
        if (language === 'en') await expect(more).toHaveText('More (2 set)');
        await keep(page, `office-own-closed${language === 'en' ? '' : '-long'}-${viewport.width}`);
        expect(await clippedOn(page)).toEqual([]);
      }
    }
  },
);
