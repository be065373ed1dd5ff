import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer, { type KeyInput } from 'puppeteer-core';
import { onTestFinished } from 'vitest';
import { type EngineKind, seenInPage, SIZE, styleInPage } from './engine.ts';
import { has, trustInDatabase } from './trust.ts';

const PROGRAM = '/usr/bin/firefox-esr';

/** Firefox by WebDriver BiDi, with a home and a profile of its own. */
export const FIREFOX: EngineKind = {
  name: 'Firefox',
  lacking: () => [
    ...(has('firefox-esr') ? [] : ['firefox-esr']),
    ...(has('certutil') ? [] : ['libnss3-tools']),
  ],
  async start(authority) {
    const home = mkdtempSync(join(tmpdir(), 'shoulderline-firefox-'));
    const profile = join(home, 'profile');
    onTestFinished(() => rmSync(home, { recursive: true, force: true }));
    if (authority !== null) trustInDatabase(profile, authority);
    const browser = await puppeteer.launch({
      browser: 'firefox',
      executablePath: PROGRAM,
      headless: true,
      userDataDir: profile,
      env: { ...process.env, HOME: home },
      defaultViewport: SIZE,
    });
    onTestFinished(() => browser.close());
    const page = await browser.newPage();
    const complaints: string[] = [];
    page.on('console', (said) => {
      if (['error', 'warn'].includes(said.type())) complaints.push(`${said.type()}: ${said.text()}`);
    });
    // What the policy forbids comes here too.
    page.on('pageerror', (error) => complaints.push(String(error)));
    return {
      open: async (address) => void (await page.goto(address, { waitUntil: 'load' })),
      address: async () => page.url(),
      async scan(text) {
        for (const key of [...text, 'Enter']) await page.keyboard.press(key as KeyInput);
      },
      fill: (selector, text) => page.type(selector, text),
      click: (selector) => page.click(selector),
      style: (selector, property) => page.evaluate(styleInPage, [selector, property] as const),
      see: (selector) => page.evaluate(seenInPage, selector),
      complaints: async () => complaints,
      picture: () => page.screenshot(),
    };
  },
};
