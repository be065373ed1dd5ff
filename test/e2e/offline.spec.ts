import { expect, test } from '@playwright/test';
import type { Plan } from '#core/plan/plan.ts';
import { freshData, removeData, startHubProcess } from './hub-process.ts';

test('a station loaded anew while the hub is away shows every setup that it knows, and its marks reach the hub when it is back', async ({
  page,
}) => {
  const data = freshData();
  let hub = await startHubProcess(data, 0, ['--demo']);
  try {
    const { jobs } = (await (await fetch(`${hub.url}/api/jobs`)).json()) as { jobs: { id: string }[] };
    const id = jobs[0]?.id ?? '';
    const plan = (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan;
    const part = plan.doors[0]?.parts[0];
    const mill = part?.stages[0];
    if (part === undefined || mill === undefined) throw new Error('the demo has a door');

    await page.goto(`${hub.url}/station/milling`);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await expect
      .poll(() =>
        page.evaluate(
          async () => (await caches.keys()).length > 0 && (await caches.match('/')) !== undefined,
        ),
      )
      .toBe(true);
    await expect(page.locator('h3')).toContainText('Waiting at this station (');
    await page.waitForTimeout(500);
    await hub.end('SIGKILL');

    await page.reload();
    await expect(page.locator('[data-message="hub-away"]')).toBeVisible({ timeout: 3000 });
    await Promise.all([...part.code, 'Enter'].map((key) => page.keyboard.press(key)));
    await expect(page.locator(`[data-code="${part.code}"]`)).toHaveAttribute('data-stage', 'mill');
    await expect(page.locator('[data-setting="length"]').first()).toHaveAttribute('data-value', part.length);
    await page.locator('[data-action="done"]').click();
    await page.waitForTimeout(500);
    await page.reload();
    await expect(page.locator('[data-message="hub-away"]')).toBeVisible({ timeout: 3000 });

    hub = await startHubProcess(data, Number(new URL(hub.url).port));
    await expect
      .poll(
        async () => {
          const seen = (await (await fetch(`${hub.url}/api/parts/${part.code}`)).json()) as {
            stages: { state: string }[];
          };
          return seen.stages[0]?.state;
        },
        { timeout: 15_000 },
      )
      .toBe('done');
  } finally {
    await hub.end('SIGTERM');
    removeData(data);
  }
});

test('a board whose stream of events is never answered shows where the doors stand all the same', async ({
  page,
}) => {
  const data = freshData();
  const hub = await startHubProcess(data, 0, ['--demo']);
  try {
    await page.route('**/api/events*', () => undefined);
    await page.goto(`${hub.url}/board`);
    await expect(page.locator('[data-door="BENCH-1"]').first()).toBeVisible();
    // The hub tells of the very screens that it gave: such a page is not loaded anew.
    const own = await page.locator('meta[name="screens"]').getAttribute('content');
    const events = await fetch(`${hub.url}/api/events`);
    const first = await events.body?.getReader().read();
    expect(new TextDecoder().decode(first?.value)).toContain(`"screens":"${String(own)}"`);
  } finally {
    await hub.end('SIGTERM');
    removeData(data);
  }
});
