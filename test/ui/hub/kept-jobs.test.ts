// @vitest-environment node

import { IDBFactory } from 'fake-indexeddb';
import { expect, test } from 'vitest';
import { emptyProgress } from '#core/marks/progress.ts';
import { planFile } from '#core/planning/plan-file.ts';
import { type KeptJob, KeptJobs } from '#ui/hub/kept-jobs.ts';

function keptJob(job: string, seq = 0): KeptJob {
  const file = {
    format: 1,
    id: job,
    job,
    units: 'in',
    doors: [{ mark: 'A', opening: { width: '14 3/4', height: '22 1/2' } }],
  };
  const planned = planFile(file);
  if (!planned.ok) throw new Error('the door can be made');
  return {
    line: { id: job, job, units: 'in', doors: 1, parts: 5, left: 1, revision: 1, hash: 'of-1' },
    plan: planned.value,
    file,
    progress: { ...emptyProgress(job), seq },
  };
}

test('a page loaded anew finds the jobs as they were last kept', async () => {
  const factory = new IDBFactory();
  const first = [keptJob('millbrook'), keptJob('larder', 7)];
  await new KeptJobs('jobs', factory).keep(first);
  const found = await new KeptJobs('jobs', factory).all();
  expect([...found].sort((a, b) => a.progress.seq - b.progress.seq)).toEqual(first);
});

test('a job that is gone is let go, and newer progress takes the place of older', async () => {
  const factory = new IDBFactory();
  const kept = new KeptJobs('jobs', factory);
  const larder = keptJob('larder');
  await kept.keep([keptJob('millbrook'), larder]);
  const later = { ...larder, progress: { ...larder.progress, seq: 9 } };
  await kept.keep([later]);
  expect(await new KeptJobs('jobs', factory).all()).toEqual([later]);
});

test('a job that cannot be read is passed over, the others are shown', async () => {
  const factory = new IDBFactory();
  const kept = new KeptJobs('jobs', factory);
  const broken = { ...keptJob('millbrook'), plan: { format: 99 } } as unknown as KeptJob;
  await kept.keep([broken, keptJob('larder')]);
  expect((await kept.all()).map(({ line }) => line.id)).toEqual(['larder']);
});
