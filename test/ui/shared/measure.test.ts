import { beforeEach, expect, test, vi } from 'vitest';

beforeEach(() => {
  localStorage.clear();
  vi.resetModules();
});

const opened = async () => (await import('#ui/shared/measure.svelte.ts')).measure;

test('one button goes from fractions to millimetres to decimal inches and back', async () => {
  const measure = await opened();
  const seen = [0, 1, 2, 3].map(() => {
    const now = measure.of('in');
    measure.next('in');
    return now;
  });
  expect(seen).toEqual(['fractions', 'mm', 'decimals', 'fractions']);
});

test('a job in millimetres is read in fractions of an inch too, and each kind of job keeps its own choice', async () => {
  const measure = await opened();
  measure.next('mm');
  expect([measure.of('mm'), measure.of('in')]).toEqual(['fractions', 'fractions']);
  measure.next('mm');
  expect(measure.of('mm')).toBe('mm');
});

test('the choice is kept for the screen over a reload', async () => {
  (await opened()).next('in');
  vi.resetModules();
  expect((await opened()).of('in')).toBe('mm');
  localStorage.setItem('shoulderline.measure.mm', 'decimals');
  vi.resetModules();
  expect((await opened()).of('mm')).toBe('mm');
});
