import { afterEach, expect, test, vi } from 'vitest';
import { freshFolder } from './fresh-folder.ts';
import { milled, openStore, partsOf, SMALL_JOB, smallShop } from './small-shop.ts';

afterEach(() => {
  vi.useRealTimers();
});

const NOON = Date.parse('2026-10-25T12:00:00Z');
const HOUR = 3_600_000;

/** Sets the clock and nothing else: what waits goes on waiting as long as ever. */
function setClock(time: number): void {
  vi.useFakeTimers({ now: time, toFake: ['Date'] });
}

test('with the hub’s clock set back an hour, marks, prints and jobs stand in the order in which they came', async () => {
  const folder = freshFolder();
  setClock(NOON);
  const store = await smallShop(folder);
  const [first, second] = partsOf(store).map(({ code }) => code);
  await store.mark(milled(first ?? ''));
  await store.print({ job: 'boot-room', codes: [first ?? ''], stock: 'a4-3x8', printer: 'one' });
  setClock(NOON - HOUR);
  expect(await store.mark(milled(second ?? ''))).toMatchObject({ ok: true });
  expect(await store.mark(milled(first ?? '', { mark: 'undo' }))).toMatchObject({ ok: true });
  await store.print({ job: 'boot-room', codes: [first ?? ''], stock: 'a4-3x8', printer: 'two' });
  expect(store.lastPrint?.printer).toBe('two');
  const other = { ...SMALL_JOB, id: 'a-later-one', job: 'A later one' };
  expect(await store.jobs.add(other, (id) => store.seen(id))).toMatchObject({ kind: 'saved' });
  const told: string[] = [];
  for await (const { mark } of store.since(0)) told.push(`${mark.mark} ${mark.code}`);
  expect(told).toEqual([`done ${first}`, `done ${second}`, `undo ${first}`]);
  await store.close();
  const again = await openStore(folder);
  expect(again.jobs.all().map(({ document }) => document.id)).toEqual(['boot-room', 'a-later-one']);
  expect(again.lastPrint?.printer).toBe('two');
  await again.close();
});

test.each([
  ['a day and an hour behind', NOON - 25 * HOUR],
  ['a day and an hour ahead', NOON + 25 * HOUR],
  ['at its first day', 0],
  ['ninety years ahead', NOON + 90 * 365.25 * 24 * HOUR],
])(
  'a station whose clock is %s marks as ever; its time is kept, and the hub’s counts',
  async (_how, time) => {
    const folder = freshFolder();
    setClock(NOON);
    const store = await smallShop(folder);
    const [first] = partsOf(store);
    const at = new Date(time).toISOString();
    expect(await store.mark(milled(first?.code ?? '', { at }))).toMatchObject({
      ok: true,
      accepted: { received: new Date(NOON).toISOString(), mark: { at } },
    });
    expect(store.doorProgress('boot-room', first?.door ?? '').parts[first?.code ?? '']?.done).toMatchObject({
      mill: { at: new Date(NOON).toISOString() },
    });
    await store.close();
  },
);
