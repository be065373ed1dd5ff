import { expect, test } from '@playwright/test';
import { randomUUID } from 'node:crypto';
import { freshData, type HubProcess, removeData, startHubProcess } from './hub-process.ts';
import { codesOn } from '../labels/stickers/scan.ts';
import { keep } from './shop-floor.ts';

let hub: HubProcess;
const data = freshData();

test.beforeAll(async () => {
  hub = await startHubProcess(data);
});
test.afterAll(async () => {
  await hub.end('SIGTERM');
  removeData(data);
});

test('a job goes from typed openings to stickers to the mortiser to the board, and survives the wall switch', async ({
  page,
  request,
}) => {
  await page.goto(`${hub.url}/office`);
  await page.click('[data-action="new-job"]');
  await page.fill('[name="job"]', 'Ferry house kitchen');
  await page.fill('[data-row="0"] [name="mark"]', 'K1');
  await page.fill('[data-row="0"] [name="width"]', '14 3/4');
  await page.fill('[data-row="0"] [name="height"]', '22 1/2');
  await page.check('[data-row="0"] [name="arched"]');
  await page.fill('[data-row="0"] [name="rise"]', '1 3/4');
  await page.fill('[data-row="0"] [name="flat"]', '3/4');
  await keep(page, 'office');
  await page.click('[data-action="save-job"]');
  await expect(page.locator('.notice')).toContainText('Ferry house kitchen');

  const address = await page.getAttribute('[data-action="print-stickers"]', 'href');
  const pdf = await request.get(new URL(address ?? '', hub.url).href);
  expect(pdf.headers()['content-type']).toBe('application/pdf');
  const codes = await codesOn(await pdf.body());
  const plan = (await (
    await request.get(`${hub.url}/api/jobs/${encodeURIComponent('Ferry house kitchen')}`)
  ).json()) as {
    doors: {
      parts: {
        part: string;
        code: string;
        stages: {
          stage: string;
          station: string;
          settings: Record<string, string | number>;
          places?: { at: string; settings: Record<string, string | number> }[];
        }[];
      }[];
    }[];
  };
  const parts = plan.doors[0]?.parts ?? [];
  expect([...codes].sort()).toEqual(parts.map(({ code }) => code).sort());

  const stile = parts.find(({ part }) => part === 'stile-left');
  if (stile === undefined) throw new Error('the plan has no left stile');
  for (const { stage, station } of stile.stages.slice(0, 3)) {
    const answer = await request.post(`${hub.url}/api/marks`, {
      data: {
        id: randomUUID(),
        code: stile.code,
        station,
        stage,
        mark: 'done',
        at: new Date().toISOString(),
      },
    });
    expect(answer.status(), `${stage} at ${station}`).toBe(200);
  }

  await page.goto(`${hub.url}/station/mortiser`);
  await expect(page.getByRole('heading', { name: 'Mortiser' })).toBeVisible();
  await expect(page.getByText('Waiting at this station (1)')).toBeVisible();
  await page.keyboard.type(stile.code, { delay: 0 });
  await page.keyboard.press('Enter');
  const setup = page.locator(`[data-code="${stile.code}"]`);
  await expect(setup).toHaveAttribute('data-stage', 'mortise');
  const mortise = stile.stages.find(({ stage }) => stage === 'mortise');
  for (const [name, value] of Object.entries(mortise?.settings ?? {}))
    await expect(setup.locator(`[data-setting="${name}"]:not([data-place])`)).toHaveAttribute(
      'data-value',
      String(value),
    );
  for (const { at, settings } of mortise?.places ?? [])
    for (const [name, value] of Object.entries(settings).filter(
      // How the stile lies is told of the place that is worked on.
      ([each]) => at === 'bottom' || !/^(faceToFence|endStop)$/.test(each),
    ))
      await expect(setup.locator(`[data-setting="${name}"][data-place="${at}"]`)).toHaveAttribute(
        'data-value',
        String(value),
      );
  // 1/2 horn + 3/8 outer setback - 1/32 end play; 1/2 + 2 3/4 rail - 3/16 bead - 1/4 inner setback + 1/32; 3/16 + 1 1/4 + 1/16.
  await expect(setup.locator('[data-setting="start"][data-place="bottom"]')).toHaveAttribute(
    'data-value',
    '27/32',
  );
  await expect(setup.locator('[data-setting="stop"][data-place="bottom"]')).toHaveAttribute(
    'data-value',
    '2 27/32',
  );
  await expect(setup.locator('[data-setting="depthFromEdge"]')).toHaveAttribute('data-value', '1 1/2');
  // The first tap goes to the mortise at the top, the second marks both.
  await setup.locator('[data-action="done"]').click();
  await expect(setup.locator('[data-places]')).toHaveAttribute('data-places', '2/2');
  await expect(setup.locator('[data-place-choice="top"]')).toHaveAttribute('aria-pressed', 'true');
  await setup.locator('[data-action="done"]').click();
  await expect(setup).toHaveCount(0);
  await expect(page.getByRole('status')).toContainText('Cut the mortises: done');

  await page.goto(`${hub.url}/board`);
  const row = page.locator('[data-door="K1-1"]');
  await expect(row).toHaveAttribute('data-reached', 'mill');
  await expect(row).toContainText('4 of');
  for (const { code, part } of parts.filter(({ part }) => part !== 'stile-left')) {
    const answer = await request.post(`${hub.url}/api/marks`, {
      data: {
        id: randomUUID(),
        code,
        station: 'milling',
        stage: 'mill',
        mark: 'done',
        at: new Date().toISOString(),
      },
    });
    expect(answer.status(), part).toBe(200);
  }
  await expect(row).toHaveAttribute('data-reached', 'bead');
  await expect(row).toContainText('8 of');

  const { port } = new URL(hub.url);
  await hub.end('SIGKILL');
  hub = await startHubProcess(data, Number(port));
  await page.goto(`${hub.url}/board`);
  await expect(row).toHaveAttribute('data-reached', 'bead');
  await expect(row).toContainText('8 of');
});
