// @vitest-environment jsdom
// @vitest-environment-options {"url": "https://192.168.1.20:7518/station/milling"}

import 'fake-indexeddb/auto';
import { createHash, createHmac, webcrypto } from 'node:crypto';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { sentTo } from '#ui/hub/elsewhere.ts';
import { keepKnown, known } from '#ui/moved/known.ts';
import { moved } from '#ui/moved/moved.svelte.ts';

const TOKEN = 'c2VjcmV0LXRva2VuLW9mLXRoaXMtdmVyeS1kZXZpY2U';
const AT = 'https://192.168.1.50:7518';
const NAME = 'https://planer-pc.local:7518';

let asked: string[];
/** Where the hub is. */
let hubAt: string;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date'] });
  vi.stubGlobal('crypto', webcrypto);
  localStorage.clear();
  asked = [];
  hubAt = '';
  vi.stubGlobal('fetch', async (address: string, { body }: RequestInit) => {
    asked.push(address);
    const { origin } = new URL(address, location.href);
    if (origin !== hubAt) throw new TypeError('Failed to fetch');
    const { nonce } = JSON.parse(typeof body === 'string' ? body : '{}') as { nonce: string };
    const key = createHash('sha256').update(TOKEN).digest();
    return Response.json({
      proof: createHmac('sha256', key).update(`${nonce} ${origin}`).digest('base64url'),
    });
  });
});
afterEach(() => {
  moved.follow(false);
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const MINUTE_MS = 60_000;

test('a hub that is away is looked for after twenty seconds at the addresses that it told, and gently from then on', async () => {
  keepKnown({ device: 'saw', token: TOKEN, addresses: [NAME, AT, location.origin] });
  moved.follow(true);
  await vi.advanceTimersByTimeAsync(19_000);
  expect([asked, moved.long]).toEqual([[], false]);
  await vi.advanceTimersByTimeAsync(2000);
  expect(asked).toEqual([`${NAME}/api/moved/proof`, `${AT}/api/moved/proof`]);
  expect([moved.long, moved.at, sentTo()]).toEqual([true, null, {}]);
  await vi.advanceTimersByTimeAsync(10 * MINUTE_MS);
  expect(asked.length / 2).toBeGreaterThan(10);
  expect(asked.length / 2).toBeLessThan(22);

  hubAt = AT;
  await vi.advanceTimersByTimeAsync(MINUTE_MS);
  await vi.waitFor(() => expect(sentTo()).toEqual({ to: { origin: AT, token: TOKEN } }));
  expect(known()?.addresses).toEqual([AT, NAME]);

  // Back here, everything is as it was.
  moved.follow(false);
  expect([moved.long, moved.at, sentTo()]).toEqual([false, null, {}]);
});

test('an address is taken from a person while the hub is away for long, and from nobody before; what is none is left to others', async () => {
  keepKnown({ device: 'saw', token: TOKEN, addresses: [] });
  expect(moved.hear('192.168.1.50')).toBe(false);
  moved.follow(true);
  await vi.advanceTimersByTimeAsync(20_000);
  for (const text of ['elsewhere.example', '8.8.8.8', '2E9KD7Q3H5', 'https://elsewhere.example#192.168.1.50'])
    expect(moved.hear(text), text).toBe(false);
  expect(asked).toEqual([]);
  expect(moved.hear('192.168.1.50')).toBe(true);
  await vi.waitFor(() => expect(moved.said).toContain('nothing answers'));
  expect(asked).toEqual([`${AT}/api/moved/proof`]);
  expect(sentTo()).toEqual({});
});

test('a page that the hub told nothing, as at its own machine, looks nowhere', async () => {
  moved.follow(true);
  await vi.advanceTimersByTimeAsync(5 * MINUTE_MS);
  expect([asked, moved.long]).toEqual([[], false]);
});
