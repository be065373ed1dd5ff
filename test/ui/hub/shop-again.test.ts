// @vitest-environment node

import 'fake-indexeddb/auto';
import { afterEach, expect, test, vi } from 'vitest';
import { live } from '#ui/hub/live.svelte.ts';

class Events extends EventTarget {
  static last: Events;
  constructor() {
    super();
    Events.last = this;
  }
  readonly close = (): void => undefined;
  beat(data: object): void {
    this.dispatchEvent(new MessageEvent('beat', { data: JSON.stringify(data) }));
  }
}

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('a shop that was told as another one and did not come is asked for again once the hub is back, however long it was away', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval'] });
  vi.stubGlobal('EventSource', Events);
  let asked = 0;
  vi.stubGlobal('fetch', (path: string) => {
    if (path === '/api/shop') asked += 1;
    return Promise.reject(new Error('no answer'));
  });
  live.start();
  const BEAT = { seq: 1, ok: true, shop: 'as-it-is-now' };
  Events.last.beat({ ...BEAT, greeting: { resumed: false, last: null } });
  await vi.advanceTimersByTimeAsync(600_000);
  expect(asked).toBeGreaterThan(1);
  Events.last.dispatchEvent(new Event('error'));
  await vi.advanceTimersByTimeAsync(4000);
  const before = asked;
  // The hub is back, its shop is what was told before.
  Events.last.beat({ ...BEAT, greeting: { resumed: true, last: null } });
  await vi.advanceTimersByTimeAsync(2000);
  expect(asked).toBeGreaterThan(before);
});
