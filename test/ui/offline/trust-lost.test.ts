import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { awayWords } from '#ui/hub/away-words.ts';
import { screenShown } from '#ui/hub/screen-shown.svelte.ts';
import { trustLost } from '#ui/offline/trust-lost.svelte.ts';

const TRUST = 'http://192.168.1.20:7519';
let register: () => Promise<{ unregister: () => Promise<boolean> }>;
let end: () => void = () => undefined;

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('location', { protocol: 'https:' });
  vi.stubGlobal('navigator', { serviceWorker: { register: () => register() } });
  screenShown.trust = TRUST;
});
afterEach(() => {
  end();
  trustLost.watch(false);
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('a browser that refuses a worker for the certificate’s sake is told where to trust it again, ten seconds after the hub was lost', async () => {
  register = () => Promise.reject(new DOMException('not secure', 'SecurityError'));
  end = trustLost.watch(true);
  await vi.advanceTimersByTimeAsync(9999);
  expect(awayWords()).toMatch(/^The shop computer does not answer\.[^:]*$/);
  await vi.advanceTimersByTimeAsync(1);
  expect(awayWords()).toContain('does not trust the shop’s certificate any more, so');
  expect(awayWords()).toContain(TRUST);
  screenShown.trust = '';
  expect(awayWords()).toContain('Have the office show the pictures for one device');
});

test('one that does not say so is told after a minute that it may be that, and no worker is left behind', async () => {
  const unregister = vi.fn(() => Promise.resolve(true));
  const answers = [() => Promise.reject(new TypeError('away')), () => Promise.resolve({ unregister })];
  let asked = 0;
  register = () => answers[asked++]?.() ?? Promise.reject(new TypeError('away'));
  end = trustLost.watch(true);
  await vi.advanceTimersByTimeAsync(59_999);
  expect(awayWords()).not.toContain(TRUST);
  await vi.advanceTimersByTimeAsync(1);
  expect(awayWords()).toContain(`If other devices reach it, this one does not trust`);
  expect(awayWords()).toContain(TRUST);
  expect([asked, unregister.mock.calls.length]).toEqual([2, 1]);
  end();
  end = trustLost.watch(false);
  expect(awayWords()).not.toContain(TRUST);
});

test('at the hub’s own machine nothing of it is looked for', async () => {
  let asked = 0;
  register = () => {
    asked += 1;
    return Promise.reject(new DOMException('not secure', 'SecurityError'));
  };
  vi.stubGlobal('location', { protocol: 'http:' });
  end = trustLost.watch(true);
  await vi.advanceTimersByTimeAsync(200_000);
  expect([asked, trustLost.lost, trustLost.perhaps]).toEqual([0, false, false]);
});
