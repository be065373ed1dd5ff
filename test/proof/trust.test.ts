import { chromium } from '@playwright/test';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:https';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { makeLeaf } from '#main/network/certificates.ts';
import { disk } from '#main/store/files/disk.ts';
import { openDocument } from '#main/store/files/document.ts';
import { findBrowser } from '../../main/start/find-browser.mjs';
import { networkHub } from '../main/network/over-network.ts';
import { has, trustInDatabase } from './engines/trust.ts';

const browserPath = findBrowser();
const ui = join(import.meta.dirname, '..', '..', 'dist', 'ui');

/** A browser with a home of its own in which only this authority was put. */
async function trusting(authority: string, names: readonly string[]) {
  const home = mkdtempSync(join(tmpdir(), 'shoulderline-home-'));
  trustInDatabase(join(home, '.pki', 'nssdb'), authority);
  const browser = await chromium.launch({
    ...(browserPath === null ? {} : { executablePath: browserPath }),
    env: { ...process.env, HOME: home },
    args: [
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      `--host-resolver-rules=${names.map((name) => `MAP ${name} 127.0.0.3`).join(', ')}`,
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
    ],
  });
  onTestFinished(async () => {
    await browser.close();
    rmSync(home, { recursive: true, force: true });
  });
  return browser;
}

test.skipIf(browserPath === null || !has('certutil') || !existsSync(ui))(
  'Chromium that was given the shop’s certificate pairs with no warning, and takes no name outside the shop from the same authority',
  async () => {
    const live = await networkHub({ ui });
    const NAMES = ['bench-pc.local', 'bank.example'];
    const browser = await trusting(live.authority, NAMES);
    const page = await (await browser.newContext()).newPage();
    await page.goto(`${live.url}/station/bench`);
    await page.waitForSelector('[name="code"]');
    const { code } = await live.offer();
    await page.fill('[name="code"]', code);
    await page.fill('[name="name"]', 'Tablet');
    await page.click('[data-choose-station="bench"]');
    await page.click('[data-action="pair"]');
    await page.waitForURL(`${live.url}/station/bench`);
    expect(live.hub.network.devices.all).toMatchObject([{ name: 'Tablet', station: 'bench' }]);

    const keys = await openDocument(disk, join(live.data, 'network-keys.json'), readKeys, {
      authority: NONE,
    });
    for (const name of NAMES) {
      const leaf = await makeLeaf(keys.data.authority, [name], Date.now());
      const cert = `${leaf.certificate}\n${live.authority}`;
      const server = createServer({ key: leaf.key, cert }, (_request, answer) => answer.end('here'));
      await new Promise<void>((listening) => server.listen(0, '127.0.0.3', listening));
      onTestFinished(() => void server.close());
      const address = server.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      const went = await page
        .goto(`https://${name}:${port}/`)
        .then(() => 'taken')
        .catch((error: unknown) => String(error));
      if (name.endsWith('.local')) expect(went).toBe('taken');
      else expect(went).toMatch(/ERR_CERT/);
    }
  },
);

const NONE = { certificate: '', key: '' };

function readKeys(text: string): { authority: typeof NONE } {
  return JSON.parse(text) as { authority: typeof NONE };
}
