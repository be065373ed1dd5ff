import { defineConfig } from '@playwright/test';

import usual from './playwright.config.ts';

/** The browser tests that `npm test` leaves out: those tagged @proof. */
export default defineConfig({ ...usual, projects: [{ name: 'proof', grep: /@proof/ }] });
