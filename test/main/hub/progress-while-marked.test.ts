import { expect, test, vi } from 'vitest';
import { jobProgress } from '#core/api/marks-api.ts';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { liveHub } from './live-hub.ts';

test('progress that is told door by door says no number of a mark that came while it was told', async () => {
  const { ask, hub } = await liveHub();
  const { body } = await ask('POST', '/jobs', SMALL_JOB);
  const [{ code } = { code: '' }, ...others] = body.parts as { code: string; door: string }[];
  await hub.store.mark(milled(code));
  const begun = hub.store.lastSeq;
  const other = others.find(({ door }) => door === 'LOCKER-2')?.code ?? '';
  const before = [...hub.store.marked(SMALL_JOB.id)];
  await hub.store.mark(milled(other));
  const late = [...hub.store.marked(SMALL_JOB.id)].filter(([door]) => door === 'LOCKER-2');
  // The second door is told as it stands after a mark that the answer began before.
  vi.spyOn(hub.store, 'lastSeq', 'get').mockReturnValueOnce(begun);
  vi.spyOn(hub.store, 'marked').mockImplementationOnce(function* () {
    yield* before;
    yield* late;
  });
  const told = jobProgress.parse((await ask('GET', `/jobs/${SMALL_JOB.id}/progress`)).body);
  expect(told.seq).toBe(begun);
  expect(Object.keys(told.parts).sort()).toEqual([code, other].sort());
});
