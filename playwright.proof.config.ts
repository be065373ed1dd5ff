import { defineConfig } from '@playwright/test';

import usual from './playwright.config.ts';

/** The browser tests that `npm test` leaves out: those tagged @proof. One at a time, since one measures the screen's own work. */
export default defineConfig({ ...usual, workers: 1, projects: [{ name: 'proof', grep: /@proof/ }] });
