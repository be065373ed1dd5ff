import { type BrowserContext, expect, test } from '@playwright/test';

/** The browser's own line for an answer that refuses, or for a hub that is away: tests provoke both. */
const REFUSED = /^Failed to load resource/;

/** What goes wrong on the pages of a context from now on: exceptions that nobody caught, and errors on the console. */
export function errorsOf(context: BrowserContext): readonly string[] {
  const errors: string[] = [];
  context.on('weberror', (error) => errors.push(String(error.error())));
  context.on('console', (said) => {
    if (said.type() === 'error' && !REFUSED.test(said.text())) errors.push(said.text());
  });
  return errors;
}

/** Every test of the file fails when one of its pages throws or writes an error. */
export function failOnErrors(): void {
  let errors: readonly string[] = [];
  test.beforeEach(({ context }) => {
    errors = errorsOf(context);
  });
  test.afterEach(() => {
    expect(errors).toEqual([]);
  });
}
