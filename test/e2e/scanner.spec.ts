import { type CDPSession, expect, type Page, test } from '@playwright/test';
import { shopAnswer } from '#core/api/shop-api.ts';
import { demoHub } from './demo-hub.ts';
import { scan } from './shop-floor.ts';

const hub = demoHub();

/** Saves the shop at its hub as the office would, with another name. */
async function rename(name: string): Promise<void> {
  const { revision, ...shop } = shopAnswer.parse(await (await fetch(`${hub.url}/api/shop`)).json());
  const answer = await fetch(`${hub.url}/api/shop`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ revision, shop: { ...shop, name } }),
  });
  expect(answer.status).toBe(200);
}

test('a scan is whole when the screen hears of the shop anew in the middle of it', async ({ page }) => {
  await hub.open(page, 'milling');
  const { code } = hub.part('BENCH-1', 'stile-left');
  const middle = 5;
  // In the page itself, at the moment that the shop is known anew: the keys after it follow those before it.
  await page.evaluate(
    ({ before, after }) => {
      const press = (key: string) =>
        document.body.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      const set = localStorage.setItem.bind(localStorage);
      Storage.prototype.setItem = (name: string, value: string) => {
        set(name, value);
        if (name !== 'shoulderline.shop' || !value.includes('Heard anew')) return;
        for (const key of before) press(key);
        setTimeout(() => [...after, 'Enter'].forEach(press), 20);
      };
    },
    { before: code.slice(0, middle), after: code.slice(middle) },
  );
  await rename('Heard anew');
  await expect(page.locator('main')).toHaveAttribute('data-code', code);
});

/** The keys of a scanner, 20 ms one after another by the browser's clock, while the page is held up from the fourth on. */
async function burst(page: Page, session: CDPSession, code: string, busy: number): Promise<void> {
  const sent: Promise<unknown>[] = [];
  for (const [k, key] of [...code, 'Enter'].entries()) {
    if (k === 4)
      sent.push(
        page.evaluate((ms) => {
          const end = performance.now() + ms;
          while (performance.now() < end);
        }, busy),
      );
    const pressed = key === 'Enter' ? { key, code: key, text: '\r' } : { key, text: key };
    sent.push(
      session.send('Input.dispatchKeyEvent', { ...pressed, type: 'keyDown' }),
      session.send('Input.dispatchKeyEvent', { key, type: 'keyUp' }),
    );
    await page.waitForTimeout(20);
  }
  await Promise.all(sent);
}

for (const busy of [300, 700])
  test(`a scan is whole when the page is busy for ${busy} ms in the middle of it`, async ({ page }) => {
    await hub.open(page, 'milling');
    const session = await page.context().newCDPSession(page);
    const { code } = hub.part('BENCH-1', 'stile-right');
    await burst(page, session, code, busy);
    await expect(page.locator('main')).toHaveAttribute('data-code', code);
    await expect(page.locator('[data-message]')).toHaveCount(0);
    // The next one too.
    const next = hub.part('BENCH-1', 'rail-top').code;
    await scan(page, next);
    await expect(page.locator('main')).toHaveAttribute('data-code', next);
  });
