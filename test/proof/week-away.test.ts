import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { jobProgress } from '#core/api/marks-api.ts';
import type { Mark } from '#core/marks/mark.ts';
import { MOST_RESUMED } from '#main/hub/marks-after.ts';
import { live } from '#ui/hub/live.svelte.ts';
import { milled } from '../main/store/small-shop.ts';
import { screenAtHub, shopWithScreen, whileAway } from '../ui/hub/screen-at-hub.ts';

screenAtHub();

const KINDS: readonly Mark['mark'][] = ['done', 'proved', 'proved', 'undo'];

test.each([
  ['hundreds of marks', MOST_RESUMED / 4, false],
  ['thousands of marks', 20_000, true],
])('a screen that was away for %s has all of them within three seconds', async (_what, count, anew) => {
  const { hub, codes } = await shopWithScreen(100);
  let back = 0;
  const asked = await whileAway(hub, async () => {
    const { store } = hub.hub;
    for (let made = 0; made < count; made += 500)
      await Promise.all(
        Array.from({ length: 500 }, (_, k) =>
          store.mark(
            milled(codes[(made + k) % codes.length] ?? '', {
              mark: KINDS[Math.floor((made + k) / codes.length) % 4] ?? 'proved',
            }),
          ),
        ),
      );
    back = performance.now();
  });
  // Looking whether it asks for nothing more takes a moment of this.
  expect(performance.now() - back).toBeLessThan(3000);
  expect(asked.includes('/api/jobs/first/progress')).toBe(anew);
  const there = jobProgress.parse((await hub.ask('GET', '/jobs/first/progress')).body);
  expect(there.seq).toBeGreaterThanOrEqual(count);
  expect(live.jobs.get('first')?.progress).toEqual(there);
});
