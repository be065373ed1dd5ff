import { expect, test } from 'vitest';
import type { JobMaker, MakeKind } from '#main/store/documents/job-maker.ts';
import { inThisThread } from '#main/store/documents/make-job.ts';
import { disk } from '#main/store/files/disk.ts';
import { Store } from '#main/store/store.ts';
import { freshFolder } from './fresh-folder.ts';
import { milled, partsOf, SMALL_JOB } from './small-shop.ts';

/** A store whose jobs are made by another that does something else before it answers. */
async function shop(before: Partial<Record<MakeKind, () => Promise<void>>>) {
  const maker: JobMaker = {
    async makeJob(asked, how) {
      const made = await inThisThread.makeJob(asked, how);
      await before[asked.make]?.();
      return made;
    },
  };
  const store = await Store.open({ port: disk, folder: freshFolder(), version: 'test', maker });
  await store.jobs.add(SMALL_JOB, () => false);
  return { store, codes: partsOf(store).map(({ code }) => code) };
}

const THICKER = { ...SMALL_JOB, defaults: { thickness: '7/8' } };

test('a mark that comes while a job is planned anew counts as made by the plan of before, and is kept so', async () => {
  const marks: { during: () => Promise<void> } = { during: async () => undefined };
  const { store, codes } = await shop({ change: () => marks.during() });
  await store.mark(milled(codes[0] ?? ''));
  marks.during = async () => {
    expect(await store.mark(milled(codes[1] ?? ''))).toMatchObject({ ok: true });
    expect(await store.mark(milled(codes[0] ?? '', { mark: 'undo' }))).toMatchObject({ ok: true });
  };
  expect((await store.jobs.update('boot-room', 1, THICKER)).kind).toBe('changed');
  const rows = store.jobs.get('boot-room')?.document.asMarked.filter(({ name }) => name === 'thickness');
  expect(rows).toEqual([{ code: codes[1], stage: 'mill', seq: 3, name: 'thickness', was: '3/4' }]);
  await store.close();
});

test('a mark that comes while the new plan is put in place waits, and is judged by it', async () => {
  const marks: { during: () => Promise<void> } = { during: async () => undefined };
  const ends: string[] = [];
  let waiting: Promise<unknown> = Promise.resolve();
  const { store, codes } = await shop({
    change: async () => void (await store.mark(milled(codes[0] ?? ''))),
    late: () => marks.during(),
  });
  marks.during = async () => {
    waiting = store.mark(milled(codes.at(-1) ?? '')).then((marked) => {
      ends.push(marked.ok ? 'marked' : marked.code);
    });
    // A scan is answered all the same.
    expect((await store.findInFull(codes[0] ?? ''))?.full.thickness).toBe('3/4');
    await new Promise((later) => setTimeout(later, 20));
    ends.push('still waiting');
  };
  const fewer = { ...THICKER, doors: SMALL_JOB.doors.map((door) => ({ ...door, quantity: 1 })) };
  expect((await store.jobs.update('boot-room', 1, fewer)).kind).toBe('changed');
  await waiting;
  // The second door is no more.
  expect(ends).toEqual(['still waiting', 'unknown-code']);
  expect((await store.findInFull(codes[0] ?? ''))?.full.thickness).toBe('7/8');
  await store.close();
});

test('of two saves of one job at once the second finds another revision; of two jobs both are saved', async () => {
  const { store } = await shop({ change: () => new Promise((later) => setTimeout(later, 20)) });
  await store.jobs.add({ ...SMALL_JOB, id: 'hall', job: 'Hall' }, () => false);
  const kinds = await Promise.all([
    store.jobs.update('boot-room', 1, THICKER),
    store.jobs.update('boot-room', 1, THICKER),
    store.jobs.update('hall', 1, { ...THICKER, id: 'hall', job: 'Hall' }),
  ]);
  expect(kinds).toMatchObject([{ kind: 'changed' }, { kind: 'stale', revision: 2 }, { kind: 'changed' }]);
  await store.close();
});

test('a save that is not wanted any more is not made', async () => {
  const { store } = await shop({});
  const signal = AbortSignal.abort();
  await expect(store.jobs.update('boot-room', 1, THICKER, { signal })).rejects.toThrow();
  expect(store.jobs.get('boot-room')?.document.revision).toBe(1);
  await store.close();
});
