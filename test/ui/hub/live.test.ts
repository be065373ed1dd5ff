// @vitest-environment node

import 'fake-indexeddb/auto';
import { afterEach, expect, test, vi } from 'vitest';
import type { Mark } from '#core/marks/mark.ts';
import { live } from '#ui/hub/live.svelte.ts';
import { openShop } from '../station/shop-for-stations.ts';

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

test('a blank that was given up here, and its replacement, are known from the answer, before the hub’s own event of it', async () => {
  const { plan } = openShop();
  vi.restoreAllMocks();
  const rail = plan.doors[0]?.parts.find(({ part }) => part === 'rail-bottom');
  if (rail === undefined) throw new Error('no rail');
  const replacement = '7K2Q4MX8BD';
  vi.stubGlobal(
    'fetch',
    vi.fn(() => Promise.resolve(Response.json({ code: rail.code, stages: [], next: null, replacement }))),
  );
  const mark: Mark = {
    id: crypto.randomUUID(),
    code: rail.code,
    station: 'milling',
    stage: 'mill',
    mark: 'spoiled',
    at: '2026-11-26T08:00:00Z',
  };
  const door = plan.doors[0]?.door ?? '';
  const posted = await live.outbox.post({ mark, job: plan.id, door, part: rail.part });
  expect(posted).toMatchObject({ kind: 'ok', value: { replacement } });
  const progress = live.jobs.get(plan.id)?.progress;
  if (progress === undefined) throw new Error('no progress');
  const { parts } = progress;
  expect(parts[rail.code]).toMatchObject({ replacedBy: replacement, spoiled: { stage: 'mill' } });
  expect(parts[replacement]?.number).toBe(1);
  expect(live.find(replacement)?.found.part.part).toBe('rail-bottom');
  expect(live.jobs.get(plan.id)?.confirmed.parts).toEqual({});
});
