import { type BrowserContext, expect, test } from '@playwright/test';

/** The browser's own lines for an answer that refuses, or for a hub that is away: tests provoke both. */
export const REFUSED = /^(Failed to load resource|An unknown error occurred when fetching the script)/;

/** What the hub's policy forbids a page becomes an error on the console: Chromium says it to nobody but the page itself. */
export async function sayForbidden(context: BrowserContext): Promise<void> {
  await context.addInitScript(() =>
    addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sourceFile }) =>
      console.error(`forbidden by ${effectiveDirective}: ${blockedURI} in ${sourceFile}`),
    ),
  );
}

/** What goes wrong on the pages of a context from now on: exceptions that nobody caught, and errors on the console. */
export async function errorsOf(context: BrowserContext): Promise<readonly string[]> {
  const errors: string[] = [];
  await sayForbidden(context);
  context.on('weberror', (error) => errors.push(String(error.error())));
  context.on('console', (said) => {
    if (said.type() === 'error' && !REFUSED.test(said.text())) errors.push(said.text());
  });
  return errors;
}

/** Every test of the file fails when one of its pages throws or writes an error. */
export function failOnErrors(): void {
  let errors: readonly string[] = [];
  test.beforeEach(async ({ context }) => {
    errors = await errorsOf(context);
  });
  test.afterEach(() => {
    expect(errors).toEqual([]);
  });
}
