import { expect, type Page, test } from '@playwright/test';
import { until, Kiosk } from './kiosk-process.ts';
import { keep, onlyPlan, partOf, scan } from './shop-floor.ts';

/** `npm start` with a real Chromium, which shows no window here; what the window's keys do is proved on a display. */
let kiosk: Kiosk;
test.beforeEach(async () => {
  kiosk = await Kiosk.open();
});
test.afterEach(() => kiosk.close());

/** Kills the hub and waits for the next one's ready line; how many milliseconds that took. */
async function killHub(times: number): Promise<number> {
  process.kill(kiosk.hub(), 'SIGKILL');
  const died = performance.now();
  await kiosk.listened(times);
  return performance.now() - died;
}

async function stateOf(url: string, code: string): Promise<string | undefined> {
  const answer = await fetch(`${url}/api/parts/${code}`);
  return ((await answer.json()) as { stages: { state: string }[] }).stages[0]?.state;
}

const bench = (page: Page) => page.getByRole('heading', { name: 'Bench' });

const sameAs = (page: Page) => page.evaluate(() => 'held' in window);

test('a hub that is killed is back within 5 s on its port; the screen stays at its station with its set-up, and what was recorded meanwhile reaches it', async () => {
  const url = await kiosk.listened(1);
  expect(kiosk.said, 'what a build has made is not built again').not.toContain('building');
  const page = await kiosk.page();
  const stile = partOf(await onlyPlan({ url }), 'BENCH-1', 'stile-left');
  await page.click('[data-choose-station="milling"]');
  await expect(page.locator('[data-loaded="true"]')).toBeVisible();
  await scan(page, stile.code);
  const setUp = page.locator(`main[data-code="${stile.code}"]`);
  await expect(setUp).toBeVisible();
  await page.evaluate(() => Object.assign(window, { held: true }));

  process.kill(kiosk.hub(), 'SIGKILL');
  const died = performance.now();
  await page.click('[data-action="done"]');
  expect(await kiosk.listened(2)).toBe(url);
  const back = performance.now() - died;
  console.log(`ready again ${Math.round(back)} ms after the death`);
  expect(back).toBeLessThan(5000);
  await expect.poll(() => stateOf(url, stile.code), { timeout: 15_000 }).toBe('done');
  await expect(page.locator('[data-message="hub-away"]')).toBeHidden();
  expect(await sameAs(page)).toBe(true);
  await expect(page).toHaveURL(`${url}/station/milling`);
});

test(
  'five deaths in a minute: a page says so with the log’s last line, and “Try again” brings the screens back to their station',
  { tag: '@proof' },
  async () => {
    const url = await kiosk.listened(1);
    const chosen = await kiosk.page();
    await chosen.click('[data-choose-station="bench"]');
    await expect(chosen.locator('[data-loaded="true"]')).toBeVisible();
    for (let death = 1; death < 5; death += 1) await killHub(death + 1);
    process.kill(kiosk.hub(), 'SIGKILL');
    await until('the fifth death', () => kiosk.said.includes('died 5 times in a minute') || null);
    const told = await kiosk.pageWith((page) => page.locator('[data-stopped="hub"]'));
    await expect(told.getByRole('heading')).toHaveText('The program on the shop computer has stopped');
    await expect(told.locator('main')).toContainText('SIGKILL');
    await expect(told.locator('.line')).toHaveText(/^\d{4}-\d\d-\d\dT.* \w+/);
    await keep(told, 'kiosk-stopped');
    await told.getByRole('button', { name: 'Try again' }).click();
    await kiosk.listened(6);
    const page = await kiosk.pageWith(bench);
    expect(page.url()).toContain(url);
  },
);

test('a window that is closed is opened anew and the hub stays; once full screen was left it stays closed, and all ends', async () => {
  const url = await kiosk.listened(1);
  const hub = kiosk.hub();
  const first = kiosk.browser();
  process.kill(first, 'SIGTERM');
  const second = await until('another window', () => kiosk.otherBrowser(first));
  expect((await fetch(`${url}/api/health`)).status).toBe(200);
  expect(kiosk.hub()).toBe(hub);
  expect(await (await kiosk.page()).title()).not.toBe('');

  const left = await fetch(`${url}/api/kiosk/leave`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });
  expect(left.status).toBe(200);
  const ordinary = await until('an ordinary window', () => kiosk.otherBrowser(second));
  process.kill(ordinary, 'SIGTERM');
  await until('the end', () => (kiosk.start.exitCode === 0 ? true : null));
  await expect(fetch(`${url}/api/health`)).rejects.toThrow();
});

test('no link and no script opens a second window', async () => {
  const url = await kiosk.listened(1);
  const only = [`page ${(await kiosk.page()).url()}`];
  const window = await kiosk.bare();
  const openedAndClosed = async (times: number) => {
    await expect.poll(() => [...window.opened.values()]).toEqual(Array(times).fill('closed'));
    expect(await window.pages()).toEqual(only);
  };
  for (const [index, rel] of ['noopener', 'opener'].entries()) {
    await window.run(`{
      const link = Object.assign(document.createElement('a'), { href: '/board', target: '_blank', rel: '${rel}' });
      Object.assign(link.style, { position: 'fixed', inset: 0, zIndex: 9 });
      document.body.append(link);
    }`);
    await window.click(50, 50);
    await openedAndClosed(index + 1);
  }
  expect(await window.run(`open('${url}/board') !== null`)).toBe(true);
  await openedAndClosed(3);
  expect(await window.run('1 + 1'), 'the page answers').toBe(2);
  window.close();
});

test('a page that crashes is back at its station; the fourth time in a minute a page says so, and “Try again” brings it back', async () => {
  const url = await kiosk.listened(1);
  await (await kiosk.page()).click('[data-choose-station="bench"]');
  const browser = kiosk.browser();
  for (let crash = 1; crash <= 3; crash += 1) {
    await kiosk.crash();
    const page = await kiosk.pageWith(bench);
    await expect(page).toHaveURL(`${url}/station/bench`);
    expect(kiosk.browser()).toBe(browser);
  }
  await kiosk.crash();
  const told = await kiosk.pageWith((page) => page.locator('[data-stopped="screen"]'));
  await expect(told.getByRole('heading')).toHaveText('This screen keeps failing');
  await keep(told, 'kiosk-failing');
  // The window is opened anew at once, and with it goes the page that was tapped.
  await told
    .getByRole('button', { name: 'Try again' })
    .click()
    .catch(() => undefined);
  const page = await kiosk.pageWith(bench);
  expect(page.url()).toContain(url);
});
