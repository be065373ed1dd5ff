// @vitest-environment node
import { afterEach, expect, test, vi } from 'vitest';
import { prove } from '#ui/pairing/prove.ts';

/** A browser whose workers come as they are told to: an answer, or why there is none. */
function browser(comes: readonly (string | DOMException)[]): { asked: () => number } {
  let asked = 0;
  const register = () => {
    const what = comes[Math.min(asked, comes.length - 1)];
    asked += 1;
    if (typeof what !== 'string') return Promise.reject(what ?? new Error('nothing is told'));
    const active = {
      postMessage: (_data: unknown, [port]: MessagePort[]) => port?.postMessage(what),
    };
    return Promise.resolve({ active, installing: null, waiting: null, unregister: async () => true });
  };
  vi.stubGlobal('navigator', { serviceWorker: { register } });
  return { asked: () => asked };
}
afterEach(() => vi.unstubAllGlobals());

test('a worker that could not be had at first is asked for again, and what it answers proves the trust', async () => {
  const late = new DOMException('late', 'AbortError');
  const { asked } = browser([late, late, 'answer']);
  expect(await prove('1.a')).toBe('answer');
  expect(asked()).toBe(3);
});

test('a browser that says it does not trust the certificate is asked once, one that never says why a few times', async () => {
  const untrusted = browser([new DOMException('no', 'SecurityError')]);
  expect(await prove('1.a')).toBeNull();
  expect(untrusted.asked()).toBe(1);
  const silent = browser([new DOMException('no', 'AbortError')]);
  expect(await prove('1.a')).toBeNull();
  expect(silent.asked()).toBe(4);
});
