import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inThisThread } from '#main/store/documents/make-job.ts';
import { indexName } from '#main/store/documents/index-file.ts';
import { keptPlanName } from '#main/store/documents/kept-plan.ts';
import type { JobMaker } from '#main/store/documents/job-maker.ts';
import { disk } from '#main/store/files/disk.ts';
import { Store } from '#main/store/store.ts';
import { freshFolder } from './fresh-folder.ts';
import { milled, openStore, partsOf, SMALL_JOB, smallShop } from './small-shop.ts';

test('a job whose plan this version has kept is planned by nobody at the next start, changed and out of the bin again too', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const [first] = partsOf(store);
  await store.mark(milled(first?.code ?? ''));
  await store.jobs.update('boot-room', 1, { ...SMALL_JOB, defaults: { thickness: '7/8' } });
  expect(store.jobs.get('boot-room')?.document.asMarked).toMatchObject([{ name: 'thickness', was: '3/4' }]);
  await store.binJob('boot-room');
  await store.restoreJob('boot-room');
  const parts = partsOf(store);
  await store.close();
  const asked: string[] = [];
  const maker: JobMaker = {
    makeJob(what, how) {
      asked.push(what.make);
      return inThisThread.makeJob(what, how);
    },
  };
  const again = await Store.open({ port: disk, folder, version: 'test', maker });
  expect(asked).toEqual([]);
  expect(partsOf(again)).toEqual(parts);
  expect(await again.mark(milled(parts[1]?.code ?? ''))).toMatchObject({ ok: true });
  await again.close();
  const other = await Store.open({ port: disk, folder, version: 'other', maker });
  expect(asked).toEqual(['plan']);
  expect(partsOf(other)).toEqual(parts);
  await other.close();
});

test('after an older version was gone back to, the plan that it kept is made anew and nothing is told', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const parts = partsOf(store);
  await store.close();
  const index = join(folder, 'jobs', indexName('boot-room'));
  const known = readFileSync(index);
  await (await Store.open({ port: disk, folder, version: 'older', maker: inThisThread })).close();
  // A version that knows of no index leaves it as it was.
  writeFileSync(index, known);
  const again = await openStore(folder);
  expect(again.troubles).toEqual([]);
  expect(partsOf(again)).toEqual(parts);
  await again.close();
});

test('a large job is read from its kept plan a door at a time; damaged, it is told of and made anew', async () => {
  const folder = freshFolder();
  const store = await openStore(folder);
  const doors = Array.from({ length: 3 }, (_, k) => ({
    mark: `M${k}`,
    quantity: 90,
    opening: { width: `${14 + k}`, height: '30' },
  }));
  const job = { format: 1, id: 'long', job: 'Long', units: 'in', doors };
  expect((await store.jobs.add(job, () => false)).kind).toBe('saved');
  const code = store.jobs.get('long')?.index.door(200).parts[0]?.code ?? '';
  const told = await store.findInFull(code);
  expect(told?.full.stages[0]?.settings).toMatchObject({
    length: told?.full.length,
    width: told?.full.width,
  });
  await store.close();
  const again = await openStore(folder);
  expect((await again.findInFull(code))?.full).toEqual(told?.full);
  expect(again.troubles).toEqual([]);
  const path = join(folder, 'jobs', keptPlanName('long'));
  const whole = readFileSync(path);
  writeFileSync(path, Buffer.from(whole).fill(0, 200));
  const other = again.jobs.get('long')?.index.door(100).parts[0]?.code ?? '';
  expect((await again.findInFull(other))?.full).toMatchObject({ length: told?.full.length });
  expect(again.troubles).toEqual([{ code: 'plan-damaged', figures: { job: 'Long' } }]);
  expect(readFileSync(path).equals(whole)).toBe(true);
  await again.close();
  // What nobody asks for is looked through after the start.
  writeFileSync(path, whole.subarray(0, -40));
  const third = await openStore(folder);
  await third.troublesKnown();
  await expect.poll(() => third.troubles.map(({ code: each }) => each)).toEqual(['plan-damaged']);
  await third.close();
});
