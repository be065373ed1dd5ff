import { chromium, expect, test } from '@playwright/test';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plan } from '#core/plan/plan.ts';
import { cameraPicture } from './camera-picture.ts';
import { freshData, removeData, startHubProcess } from './hub-process.ts';
import { pngPages } from '../labels/read-pdf.ts';

test('a sticker held before a camera is scanned, and the decoder is loaded only then', async ({
  launchOptions,
}) => {
  const data = freshData();
  const film = join(data, '..', `camera-${process.pid}.y4m`);
  const hub = await startHubProcess(data, 0, ['--demo']);
  try {
    const { jobs } = (await (await fetch(`${hub.url}/api/jobs`)).json()) as { jobs: { id: string }[] };
    const id = jobs[0]?.id ?? '';
    const plan = (await (await fetch(`${hub.url}/api/jobs/${id}`)).json()) as Plan;
    const code = plan.doors[0]?.parts[0]?.code ?? '';
    const pdf = await fetch(`${hub.url}/api/jobs/${id}/stickers.pdf?stock=roll-3x1&codes=${code}`);
    const [sticker] = await pngPages(new Uint8Array(await pdf.arrayBuffer()), 203);
    if (sticker === undefined) throw new Error('a sticker was printed');
    writeFileSync(film, await cameraPicture(sticker, { x: 0, y: 0, width: 609, height: 203 }));

    const browser = await chromium.launch({
      ...launchOptions,
      args: [
        ...(launchOptions.args ?? []),
        '--use-fake-ui-for-media-stream',
        '--use-fake-device-for-media-stream',
        `--use-file-for-fake-video-capture=${film}`,
      ],
    });
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`${hub.url}/station/milling`);
    await page.locator('[data-action="camera"]').click({ timeout: 10_000 });
    expect(asked.filter((address) => new URL(address).origin !== hub.url)).toEqual([]);
    await expect(page.locator(`[data-code="${code}"]`)).toHaveAttribute('data-stage', 'mill', {
      timeout: 20_000,
    });
    expect(asked.some((address) => address.endsWith('.wasm'))).toBe(true);
    expect(asked.filter((address) => new URL(address).origin !== hub.url)).toEqual([]);
    await browser.close();
  } finally {
    await hub.end('SIGTERM');
    removeData(data);
    rmSync(film, { force: true });
  }
});

test('a screen without a camera offers none, and loads no decoder', { tag: '@proof' }, async ({ page }) => {
  const data = freshData();
  const hub = await startHubProcess(data, 0, ['--demo']);
  try {
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`${hub.url}/station/milling`);
    await expect(page.locator('h3')).toContainText('Waiting at this station (');
    await expect(page.locator('[data-action="find"]')).toBeVisible();
    await expect(page.locator('[data-action="camera"]')).toHaveCount(0);
    expect(asked.filter((address) => address.endsWith('.wasm'))).toEqual([]);
  } finally {
    await hub.end('SIGTERM');
    removeData(data);
  }
});
