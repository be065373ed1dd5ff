import { fireEvent, render, screen } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { shopAnswer } from '#core/api/shop-api.ts';
import { writeProfile } from '#core/shop/read-profile.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { shopAtFirst } from '#core/shop/shop-start.ts';
import { shop as known } from '#ui/hub/shop.svelte.ts';
import ShopPage from '#ui/office/ShopPage.svelte';
import { emptyPerson, shopDraftOf } from '#ui/office/shop-draft.ts';
import { typedOver } from '#ui/office/typed-over.ts';

const shop = shopAnswer.parse({
  revision: 3,
  ...shopAtFirst(),
  name: 'Millbrook',
  otherProfile: writeProfile(builtInProfile('mm')),
});
const newer = { ...shop, revision: 4, name: 'Quay', people: [{ id: 'ada', name: 'Ada', badge: 'P-ADA' }] };
let answer: (response: Response) => void;
let asked: number;

beforeEach(() => {
  known.now = shop;
  asked = 0;
  vi.stubGlobal('fetch', () => {
    asked += 1;
    return new Promise<Response>((done) => (answer = done));
  });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  known.now = null;
});

const field = (name: string) => {
  const found = document.querySelector(`[name="${name}"]`);
  if (!(found instanceof HTMLInputElement)) throw new Error(`no field ${name}`);
  return found;
};

test('what is typed before the hub has answered stays, and what is not comes from the hub', async () => {
  render(ShopPage);
  await fireEvent.input(field('tool.slidingFit'), { target: { value: '3/64' } });
  answer(Response.json(newer));
  await vi.waitFor(() => expect(field('shop-name').value).toBe('Quay'));
  expect(field('tool.slidingFit').value).toBe('3/64');
});

test('a shop that does not come at once is asked for again', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  known.now = null;
  render(ShopPage);
  expect(screen.queryByText('Save the shop')).toBeNull();
  answer(new Response('busy', { status: 503 }));
  await vi.advanceTimersByTimeAsync(1500);
  expect(asked).toBe(2);
  answer(Response.json(shop));
  await vi.waitFor(() => expect(field('shop-name').value).toBe('Millbrook'));
});

test('typed fields stay one by one, a list as a whole, and the keys of rows on the screen count for nothing', () => {
  const filled = shopDraftOf(shop);
  const typed = { ...shopDraftOf(shop), prefix: 'x' };
  typed.tools.in.slidingFit = '3/64';
  const came = shopDraftOf(newer);
  const over = typedOver(typed, filled, came);
  expect(over).toEqual({
    ...came,
    prefix: 'x',
    tools: { ...came.tools, in: { ...came.tools.in, slidingFit: '3/64' } },
  });
  typed.people = [{ ...emptyPerson(), name: 'Wren' }];
  expect(typedOver(typed, filled, came).people.map(({ name }) => name)).toEqual(['Wren']);
});
