import { defineConfig } from '@playwright/test';

import { findBrowser } from './main/start/find-browser.mjs';

/** `npm test` shows pages in a Chromium without windows, where there is one; the proofs, and `npm run e2e`, in the whole. */
const browser = process.env.PAGES_IN ?? findBrowser();
/** Tests so tagged prove more than a change needs to be guarded by: `npm run proof` runs them. */
const PROOF = /@proof/;
const root = process.getuid?.() === 0;

export default defineConfig({
  testDir: 'test/e2e',
  outputDir: 'test-results',
  fullyParallel: false,
  workers: 2,
  retries: 2,
  timeout: 180_000,
  expect: { timeout: 10_000 },
  forbidOnly: process.env.CI !== undefined,
  reporter: 'list',

  projects: [{ name: 'floor', grepInvert: PROOF }],

  use: {
    viewport: { width: 1280, height: 800 },
    hasTouch: true,
    launchOptions: {
      ...(browser === null ? {} : { executablePath: browser }),
      args: [
        '--disable-gpu',
        '--disable-background-networking',
        '--disable-component-update',
        ...(root ? ['--no-sandbox'] : []),
      ],
    },
  },
});
