import { fireEvent, render, waitFor } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Offer } from '#core/api/network-api.ts';
import { say } from '#core/words/say.ts';
import NetworkOffer from '#ui/office/NetworkOffer.svelte';

/** The clock of this screen is an hour ahead of the hub's: for it the offer was over before it was made. */
const OFFER: Offer = {
  code: 'ABCD2345',
  until: new Date(Date.now() - 50 * 60_000).toISOString(),
  at: [{ named: false, pairing: 'https://p', pairingSymbol: ['10', '01'], trust: null, trustSymbol: null }],
};
beforeEach(() => {
  Element.prototype.scrollIntoView = () => undefined;
  vi.stubGlobal('fetch', () => Promise.resolve(Response.json(OFFER)));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const seen = (selector: string) => document.querySelector(selector);
async function offered() {
  const { rerender } = render(NetworkOffer, { paired: 2 });
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const button = seen('[data-action="offer"]');
  if (button === null) throw new Error('nothing offers');
  await fireEvent.click(button);
  await vi.waitFor(() => expect(seen('[data-code]')).not.toBeNull());
  return { rerender, again: () => fireEvent.click(button) };
}

test('what a device is paired by is shown for ten minutes by whatever clock, then that it is over, until it is shown anew', async () => {
  const { again } = await offered();
  await vi.advanceTimersByTimeAsync(10 * 60_000 - 1000);
  expect(seen('[data-code]')).not.toBeNull();
  expect(seen('[data-offer-ended]')).toBeNull();
  await vi.advanceTimersByTimeAsync(1000);
  expect(seen('[data-code]')).toBeNull();
  expect(seen('[role="status"]')?.textContent).toBe(say('network.offer.over'));
  await again();
  await vi.waitFor(() => expect(seen('[data-code]')).not.toBeNull());
  expect(seen('[data-offer-ended]')).toBeNull();
});

test('once a device was paired, what it was paired by gives way to saying so', async () => {
  const { rerender } = await offered();
  await rerender({ paired: 3 });
  await waitFor(() => expect(seen('[data-code]')).toBeNull());
  expect(seen('[role="status"]')?.textContent).toBe(say('network.offer.taken'));
});
