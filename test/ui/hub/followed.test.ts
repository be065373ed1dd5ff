// @vitest-environment node

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Followed } from '#ui/hub/followed.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

test('what changes while an answer is on its way is asked for once more, and never twice at a time', async () => {
  let loads = 0;
  let atOnce = 0;
  const followed = new Followed(async () => {
    loads += 1;
    expect((atOnce += 1)).toBe(1);
    await new Promise((soon) => setTimeout(soon, 100));
    atOnce -= 1;
    return true;
  });
  for (let k = 0; k < 5; k += 1) void followed.look();
  await vi.advanceTimersByTimeAsync(1000);
  expect(loads).toBe(2);
});

test('what did not come, or came in another form, is asked for again after a moment', async () => {
  const answers = [() => false, () => Promise.reject(new Error('another form')), () => true];
  let loads = 0;
  const followed = new Followed(async () => (await answers[loads++]?.()) ?? true);
  await followed.look();
  expect(loads).toBe(1);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(loads).toBe(3);
});
