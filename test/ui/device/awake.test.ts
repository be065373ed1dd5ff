// @vitest-environment node

import { expect, test } from 'vitest';
import { keepAwake } from '#ui/device/awake.ts';

/** A browser's lock on a page that can be hidden and shown: what is held now, and how often it was asked for. */
function browser() {
  let visible = true;
  let asked = 0;
  const held = new Set<object>();
  const listeners = new Set<() => void>();
  const wakeLock = {
    request: async () => {
      asked += 1;
      if (!visible) throw new DOMException('not now', 'NotAllowedError');
      const lock = { release: async () => void held.delete(lock) };
      held.add(lock);
      return Promise.resolve(lock);
    },
  };
  const page = {
    get visibilityState(): DocumentVisibilityState {
      return visible ? 'visible' : 'hidden';
    },
    addEventListener: (_kind: string, listen: () => void) => void listeners.add(listen),
    removeEventListener: (_kind: string, listen: () => void) => void listeners.delete(listen),
  } as unknown as Document;
  const show = (now: boolean) => {
    visible = now;
    if (!now) held.clear();
    for (const listen of listeners) listen();
  };
  return { wakeLock, page, show, held, listeners, asked: () => asked };
}
const settled = () => new Promise((next) => setTimeout(next, 0));

test('the screen is kept awake until it is let go', async () => {
  const { wakeLock, page, held, listeners } = browser();
  const over = keepAwake({ wakeLock }, page);
  await settled();
  expect(held.size).toBe(1);
  over();
  await settled();
  expect(held.size).toBe(0);
  expect(listeners.size).toBe(0);
});

test('after another page was shown it is kept awake again, once', async () => {
  const { wakeLock, page, show, held, asked } = browser();
  const over = keepAwake({ wakeLock }, page);
  await settled();
  show(false);
  await settled();
  expect([held.size, asked()]).toEqual([0, 1]);
  show(true);
  show(true);
  await settled();
  expect(held.size).toBe(1);
  over();
  await settled();
  show(true);
  await settled();
  expect(held.size).toBe(0);
});

test('let go before the browser has answered, it is not held after', async () => {
  const { wakeLock, page, held } = browser();
  keepAwake({ wakeLock }, page)();
  await settled();
  expect(held.size).toBe(0);
});

test('a browser that has no such lock, or gives none, is left in peace', async () => {
  const { page } = browser();
  expect(keepAwake({}, page)()).toBeUndefined();
  const refusing = { request: () => Promise.reject(new DOMException('battery', 'NotAllowedError')) };
  const over = keepAwake({ wakeLock: refusing }, page);
  await settled();
  over();
});
