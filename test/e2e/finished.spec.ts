import { expect, test } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import type { Plan } from '#core/plan/plan.ts';
import { freshData, removeData, startHubProcess } from './hub-process.ts';
import { scan } from './shop-floor.ts';

test('a finished job is not loaded by a station, but a scan of one of its parts still says what it is', async ({
  page,
}) => {
  const data = freshData();
  const hub = await startHubProcess(data, 0, ['--demo']);
  const send = (path: string, body: unknown) =>
    fetch(`${hub.url}/api${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  try {
    const doors = [{ mark: 'PANTRY', opening: { width: '15', height: '24' } }];
    const { id } = (await (
      await send('/jobs', { format: 1, job: 'Pantry door', units: 'in', doors })
    ).json()) as { id: string };
    const plan = (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan;
    const door = plan.doors[0];
    const code = door?.parts[0]?.code ?? '';
    const stages = [
      ...(door?.parts ?? []).flatMap((part) => part.stages.map((each) => ({ ...each, code: part.code }))),
      ...(door?.stages ?? []).map((each) => ({ ...each, code })),
    ];
    for (const { code, station, stage } of stages) {
      const at = new Date().toISOString();
      const answer = await send('/marks', { id: randomUUID(), code, station, stage, mark: 'done', at });
      expect(answer.status).toBe(200);
    }

    const asked: string[] = [];
    page.on('request', (request) => asked.push(decodeURIComponent(new URL(request.url()).pathname)));
    await page.goto(`${hub.url}/station/milling`);
    await expect(page.locator('h3')).toContainText('Waiting at this station (');
    expect(asked).not.toContain(`/api/jobs/${id}`);
    await scan(page, code);
    await expect(page.locator('[data-message]')).toContainText('Door PANTRY-1 is finished.');
    expect(asked).toContain(`/api/jobs/${id}`);

    await page.goto(`${hub.url}/office`);
    await expect(page.locator(`[data-job="${id}"]`)).toHaveCount(0);
    await page.click('[data-action="finished-jobs"]');
    await expect(page.locator(`[data-finished-jobs] [data-job="${id}"]`)).toContainText('finished');
    await page.locator(`[data-job="${id}"] [data-action="show-job"]`).click();
    await expect(page.locator('main')).toContainText('PANTRY-1');
  } finally {
    await hub.end('SIGTERM');
    removeData(data);
  }
});
