import { chromium } from '@playwright/test';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { findBrowser } from '../../../main/start/find-browser.mjs';
import { REFUSED, sayForbidden } from '../../e2e/quiet.ts';
import { type EngineKind, seenInPage, SIZE, styleInPage } from './engine.ts';
import { has, trustInDatabase } from './trust.ts';

/** Chromium by Playwright, with a home of its own. */
export const CHROMIUM: EngineKind = {
  name: 'Chromium',
  lacking: () => [
    ...(findBrowser() === null ? ['chromium'] : []),
    ...(has('certutil') ? [] : ['libnss3-tools']),
  ],
  async start(authority) {
    const home = mkdtempSync(join(tmpdir(), 'shoulderline-chromium-'));
    onTestFinished(() => rmSync(home, { recursive: true, force: true }));
    if (authority !== null) trustInDatabase(join(home, '.pki', 'nssdb'), authority);
    const browser = await chromium.launch({
      executablePath: findBrowser() ?? '',
      env: { ...process.env, HOME: home },
      args: [
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      ],
    });
    onTestFinished(() => browser.close());
    const context = await browser.newContext({ viewport: SIZE });
    await sayForbidden(context);
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('console', (said) => {
      if (REFUSED.test(said.text())) return;
      if (['error', 'warning'].includes(said.type())) complaints.push(`${said.type()}: ${said.text()}`);
    });
    page.on('pageerror', (error) => complaints.push(String(error)));
    return {
      open: async (address) => void (await page.goto(address)),
      address: async () => page.url(),
      scan: async (text) =>
        void (await Promise.all([...text, 'Enter'].map((key) => page.keyboard.press(key)))),
      fill: (selector, text) => page.locator(selector).pressSequentially(text),
      click: (selector) => page.locator(selector).first().click(),
      style: (selector, property) => page.evaluate(styleInPage, [selector, property] as const),
      see: (selector) => page.evaluate(seenInPage, selector),
      complaints: async () => complaints,
      picture: () => page.screenshot(),
    };
  },
};
