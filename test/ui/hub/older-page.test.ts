// @vitest-environment node

import 'fake-indexeddb/auto';
import { afterEach, expect, test, vi } from 'vitest';
import type { Mark } from '#core/marks/mark.ts';
import { ask } from '#ui/hub/client.ts';
import { openOutbox } from '#ui/hub/outbox.svelte.ts';
import { newerScreens } from '#ui/offline/newer-screens.ts';

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const answered = (body: unknown, status = 200) =>
  vi.stubGlobal('fetch', () => Promise.resolve(Response.json(body, { status })));

test('a mark that a hub of other screens does not understand waits for their page; one that no screens explain is refused', async () => {
  answered({ code: 'malformed', message: 'what is this?' }, 400);
  const outbox = openOutbox({
    shown: () => undefined,
    taken: () => undefined,
    dropped: () => undefined,
    settled: () => undefined,
  });
  const mark = (): Mark => ({
    id: crypto.randomUUID(),
    code: '7K2Q4MX8BD',
    station: 'milling',
    stage: 'mill',
    mark: 'done',
    at: '2026-11-26T08:00:00Z',
  });
  const post = () => outbox.post({ mark: mark(), job: 'hall', door: 'A-1', part: 'rail-top' });
  const older = vi.spyOn(newerScreens, 'older', 'get').mockReturnValue(true);
  expect(await post()).toEqual({ kind: 'kept' });
  expect(outbox.kept).toMatchObject([{ mark: { code: '7K2Q4MX8BD' } }]);
  expect(outbox.refused).toEqual([]);
  older.mockReturnValue(false);
  await outbox.send();
  expect(outbox.refused).toMatchObject([{ refused: { code: 'malformed' } }]);
});

test('an answer of another form than these screens know is looked into, and is no answer', async () => {
  const strange = vi.spyOn(newerScreens, 'strange').mockReturnValue();
  answered({ jobs: 'many' });
  await expect(ask('GET /jobs')).rejects.toThrow();
  expect(strange).toHaveBeenCalledTimes(1);
  answered({ jobs: [] });
  expect(await ask('GET /jobs')).toMatchObject({ kind: 'ok' });
  expect(strange).toHaveBeenCalledTimes(1);
});
