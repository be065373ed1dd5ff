import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { codesKnown } from '#main/commands/codes-known.ts';
import { documentName } from '#main/store/documents/job-document.ts';
import { freshFolder } from '../store/fresh-folder.ts';
import { milled, partsOf, SMALL_JOB, smallShop } from '../store/small-shop.ts';

function planOf(file: unknown): Plan {
  const planned = planFile(file);
  if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
  return planned.value;
}

test('a file’s codes are known to a hub that has its job, and to one that has none of its name', async () => {
  const folder = freshFolder();
  expect(await codesKnown(planOf(SMALL_JOB), folder)).toEqual({ ok: true, unknown: [] });
  await (await smallShop(folder)).close();
  expect(await codesKnown(planOf(SMALL_JOB), folder)).toEqual({ ok: true, unknown: [] });
  expect(await codesKnown(planOf({ ...SMALL_JOB, id: 'other', job: 'Other' }), folder)).toEqual({
    ok: true,
    unknown: [],
  });
});

test('a job that the hub holds under a fresh id is found by its name, and its file’s codes are unknown', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const [part] = partsOf(store);
  await store.mark(milled(part?.code ?? ''));
  await store.jobs.remove(SMALL_JOB.id);
  const again = await store.jobs.add(SMALL_JOB, (id) => store.seen(id));
  expect(again.kind === 'saved' && again.codesChanged).toBe(true);
  await store.close();
  const known = await codesKnown(planOf(SMALL_JOB), folder);
  expect(known.ok && known.unknown).toHaveLength(10);
});

test('a job’s document that cannot be read is told in one line, another job’s is passed over', async () => {
  const folder = freshFolder();
  mkdirSync(join(folder, 'jobs'));
  writeFileSync(join(folder, 'jobs', documentName('nobody')), '{');
  expect(await codesKnown(planOf(SMALL_JOB), folder)).toEqual({ ok: true, unknown: [] });
  writeFileSync(join(folder, 'jobs', documentName(SMALL_JOB.id)), '{');
  const known = await codesKnown(planOf(SMALL_JOB), folder);
  expect(known.ok ? '' : known.message).toMatch(/cannot be read: [^\n]+$/);
});
