// @vitest-environment node

import { expect, test, vi } from 'vitest';
import { GoneJobs } from '#ui/hub/gone-jobs.ts';

test('a database of the browser that never answers does not keep the jobs from being loaded', async () => {
  vi.useFakeTimers();
  const gone = new GoneJobs({ all: () => new Promise(() => undefined) });
  const looked = gone.look(new Set(['hall']), new Map());
  await vi.advanceTimersByTimeAsync(3000);
  expect(await looked).toBe(true);
  vi.useRealTimers();
});
