import 'fake-indexeddb/auto';
import { fireEvent, render, waitFor } from '@testing-library/svelte';
import { afterEach, expect, test, vi } from 'vitest';
import { type Shop, shopAnswer, shopFile } from '#core/api/shop-api.ts';
import { writeProfile } from '#core/shop/read-profile.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { shopAtFirst } from '#core/shop/shop-start.ts';
import { shop } from '#ui/hub/shop.svelte.ts';
import ShopPage from '#ui/office/ShopPage.svelte';
import { tolerancesOf } from '#ui/office/shop-tolerances.ts';
import { printLength } from '#core/length/print-length.ts';

const kept: Shop = shopAnswer.parse({
  revision: 3,
  ...shopAtFirst(),
  otherProfile: writeProfile(builtInProfile('mm')),
});
afterEach(() => {
  vi.unstubAllGlobals();
  shop.now = null;
});

/** A hub that has a shop and takes another; what it was sent last. */
function hub(): { readonly sent: () => unknown } {
  let body: unknown;
  vi.stubGlobal('fetch', (_: string, init: RequestInit = {}) => {
    if (init.method !== 'PUT') return Promise.resolve(Response.json(kept));
    body = JSON.parse(typeof init.body === 'string' ? init.body : 'null');
    const { shop: saved } = body as { shop: object };
    return Promise.resolve(Response.json({ ...kept, ...saved, revision: 4 }));
  });
  return { sent: () => body };
}
const field = (units: 'in' | 'mm', of: string): HTMLInputElement => {
  const found = document.querySelector(`[data-tools="${units}"] input[name="tool.tolerances.${of}"]`);
  if (!(found instanceof HTMLInputElement)) throw new Error(of);
  return found;
};

test('the shop says in both units how near it comes to what it sets, and what it changes is what doors are judged by', async () => {
  const { sent } = hub();
  render(ShopPage);
  await waitFor(() => field('in', 'stop'));
  const typed = (units: 'in' | 'mm') =>
    ['fence', 'stop', 'height', 'milling'].map((of) => field(units, of).value);
  expect(typed('in')).toEqual(['1/128', '1/64', '1/128', '1/64']);
  expect(typed('mm')).toEqual(['0.2', '0.4', '0.2', '0.4']);
  expect(field('in', 'stop').closest('label')?.textContent).toMatch(/^You set a stop block within ±/);
  await fireEvent.input(field('in', 'stop'), { target: { value: '1/32' } });
  await fireEvent.input(field('mm', 'height'), { target: { value: '0.1' } });
  document.querySelector<HTMLButtonElement>('[data-action="save-shop"]')?.click();
  await waitFor(() => expect(shop.now?.revision).toBe(4));
  const saved = shopFile.parse((sent() as { shop: unknown }).shop);
  expect(saved.profile.tolerances).toEqual({
    fence: '1/128',
    stop: '1/32',
    height: '1/128',
    milling: '1/64',
  });
  expect(printLength(tolerancesOf(shop.now, 'in').stop)).toBe('1/32');
  expect(printLength(tolerancesOf(shop.now, 'mm').height)).toBe('1/10');
  expect(printLength(tolerancesOf(null, 'mm').height)).toBe('1/5');
});
