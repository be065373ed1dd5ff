import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { expect, test } from 'vitest';
import { archiveLines } from '#main/store/archive/archive-lines.ts';
import { Backups } from '#main/store/archive/backups.ts';
import { codesKnown } from '#main/commands/codes-known.ts';
import { disk } from '#main/store/files/disk.ts';
import { documentName, type JobDocument } from '#main/store/documents/job-document.ts';
import { keptPlanName } from '#main/store/documents/kept-plan.ts';
import { restoringInto } from '#main/store/archive/restore.ts';
import { unsealed } from '#main/store/files/seal.ts';
import type { Store } from '#main/store/store.ts';
import { freshFolder } from './fresh-folder.ts';
import { milled, openStore, partsOf, SMALL_JOB, smallShop, planOf } from './small-shop.ts';

const ID = SMALL_JOB.id;
const NAME = documentName(ID);
/** Chisels of which none goes into the groove: no rule of this version plans a job with these. */
const WIDE = ['1', '1 1/2'];

/** Changes a job's document as it lies there, as if the rules of a later version were others. */
function change(folder: string, to: (document: JobDocument) => object): void {
  const path = join(folder, 'jobs', NAME);
  writeFileSync(path, JSON.stringify(to(JSON.parse(unsealed(readFileSync(path, 'utf8'))) as JobDocument)));
}

/** A job with a mark that was planned and is refused since, opened by the next version. */
async function refused(
  to: (document: JobDocument) => object = (document) => ({
    ...document,
    profile: { ...document.profile, chisels: WIDE },
  }),
): Promise<{ folder: string; store: Store; before: ReturnType<typeof partsOf>; plan: unknown }> {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const before = partsOf(store);
  const plan = planOf(store.jobs.get(ID));
  await store.mark(milled(before[0]?.code ?? ''));
  await store.close();
  change(folder, to);
  return { folder, store: await openStore(folder, disk, 'later'), before, plan };
}

async function* bytesOf(store: Store): AsyncGenerator<Buffer> {
  for await (const line of archiveLines(store, 'later')) yield Buffer.from(line);
}

test.each<[string, (document: JobDocument) => object]>([
  ['tools', (document) => ({ ...document, profile: { ...document.profile, chisels: WIDE } })],
  ['tools that cannot be read', (document) => ({ ...document, profile: { chisels: 'sharp' } })],
  ['measured sizes', (document) => ({ ...document, measured: { thickness: '1/8' } })],
  ['measured sizes that cannot be read', (document) => ({ ...document, measured: { girth: '9' } })],
  [
    'doors',
    (document) => ({
      ...document,
      file: {
        ...document.file,
        doors: [{ mark: 'LOCKER', quantity: 2, opening: { width: '3', height: '9' } }],
      },
    }),
  ],
  ['a file that cannot be read', (document) => ({ ...document, file: { ...document.file, knob: 'brass' } })],
])('a job whose %s a later version refuses stays, with its last plan, codes and marks', async (_what, to) => {
  const { folder, store, before, plan } = await refused(to);
  expect(store.jobs.troubles).toEqual([]);
  const stored = store.jobs.get(ID);
  expect(stored?.faults.length).toBeGreaterThan(0);
  expect(planOf(stored)).toEqual(plan);
  expect(partsOf(store)).toEqual(before);
  expect(store.board().map(({ door, done }) => [door, done])).toEqual([
    ['LOCKER-1', 1],
    ['LOCKER-2', 0],
  ]);
  expect(await store.left(stored as NonNullable<typeof stored>)).toBe(2);
  const [first, second] = before;
  expect(await store.mark(milled(first?.code ?? ''))).toMatchObject({ ok: false, code: 'already-done' });
  expect(await store.mark(milled(second?.code ?? ''))).toMatchObject({ ok: true });
  await store.snapshot();
  await store.close();
  const again = await openStore(folder, disk, 'later');
  expect(again.found.noSnapshot).toBeNull();
  expect(planOf(again.jobs.get(ID))).toEqual(plan);
  expect(again.jobs.get(ID)?.faults).toEqual(stored?.faults);
  await again.close();
});

test('a job refused by a version that follows one which kept no plan is known by its codes all the same', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const before = partsOf(store);
  await store.close();
  rmSync(join(folder, 'jobs', keptPlanName(ID)));
  change(folder, (document) => ({ ...document, profile: { ...document.profile, chisels: WIDE } }));
  const later = await openStore(folder, disk, 'later');
  expect(later.jobs.get(ID)?.faults.map(({ code }) => code)).toContain('no-chisel');
  expect(partsOf(later)).toEqual(before);
  expect(await later.mark(milled(before[0]?.code ?? ''))).toMatchObject({ ok: true });
  await later.close();
});

test('a last plan that is damaged is as good as none; that it is lost is told, and the job stays', async () => {
  const { folder, store, before } = await refused();
  await store.close();
  const path = join(folder, 'jobs', keptPlanName(ID));
  const whole = readFileSync(path);
  for (const bytes of [whole.subarray(0, whole.length / 2), Buffer.from('nonsense'), Buffer.alloc(0)]) {
    writeFileSync(path, bytes);
    const again = await openStore(folder, disk, 'later');
    expect(again.jobs.troubles).toEqual([]);
    expect(again.troubles).toEqual([{ code: 'plan-lost', figures: { job: SMALL_JOB.job } }]);
    expect(partsOf(again)).toEqual(before);
    await again.troublesKnown();
    await again.close();
  }
});

test('it is corrected by a save, which takes the shop’s tools of today where its own are refused', async () => {
  const { folder, store, before } = await refused();
  const revision = store.jobs.get(ID)?.document.revision ?? 0;
  const file = store.jobs.get(ID)?.document.file;
  expect(await store.jobs.update(ID, revision, file)).toMatchObject({ kind: 'changed' });
  expect(store.jobs.get(ID)?.faults).toEqual([]);
  expect(partsOf(store)).toEqual(before);
  await store.close();
  const again = await openStore(folder, disk, 'later');
  expect(again.jobs.get(ID)?.faults).toEqual([]);
  await again.close();
});

test('its file and its measured sizes are corrected one after the other, and neither save brings new faults', async () => {
  const { store } = await refused((document) => ({
    ...document,
    measured: { thickness: '1/8' },
    file: {
      ...document.file,
      doors: [{ mark: 'LOCKER', quantity: 2, opening: { width: '3', height: '9' } }],
    },
  }));
  expect(await store.jobs.measure(ID, 1, { girth: '9' })).toMatchObject({ kind: 'faults' });
  expect(await store.jobs.measure(ID, 1, { thickness: '1/9' })).toMatchObject({ kind: 'faults' });
  expect(await store.jobs.measure(ID, 1, {})).toMatchObject({ kind: 'changed' });
  expect(store.jobs.get(ID)?.faults.length).toBeGreaterThan(0);
  expect(await store.jobs.update(ID, 2, store.jobs.get(ID)?.document.file)).toMatchObject({ kind: 'faults' });
  expect(await store.jobs.update(ID, 2, SMALL_JOB)).toMatchObject({ kind: 'changed' });
  expect(store.jobs.get(ID)?.faults).toEqual([]);
  await store.close();
});

test('a job without faults is never saved with any', async () => {
  const store = await smallShop(freshFolder());
  expect(await store.jobs.measure(ID, 1, { thickness: '1/8' })).toMatchObject({ kind: 'faults' });
  const narrow = { ...SMALL_JOB, doors: [{ mark: 'LOCKER', opening: { width: '3', height: '9' } }] };
  expect(await store.jobs.update(ID, 1, narrow)).toMatchObject({ kind: 'faults' });
  await store.close();
});

test('removed, it is gone with its last plan, and its codes are free', async () => {
  const { folder, store, before } = await refused();
  expect(await store.jobs.remove(ID)).toBe(true);
  expect([NAME, keptPlanName(ID)].filter((name) => existsSync(join(folder, 'jobs', name)))).toEqual([]);
  expect(store.jobs.ownerOf(before[0]?.code ?? '')).toBeUndefined();
  await store.close();
});

test('an archive brings it to another shop with its last plan and marks, and a backup puts it back', async () => {
  const { store, before, plan } = await refused();
  const folder = freshFolder();
  const other = await openStore(folder, disk, 'later');
  const backups = new Backups(disk, folder);
  const restore = restoringInto(disk, folder, other, backups, 'later');
  await restore('an exported file', bytesOf(store), 'foreign');
  await store.close();
  expect(planOf(other.jobs.get(ID))).toEqual(plan);
  expect(other.jobs.get(ID)?.faults.length).toBeGreaterThan(0);
  expect(await other.mark(milled(before[0]?.code ?? ''))).toMatchObject({ ok: false, code: 'already-done' });
  const backup = await backups.make(other, 'later', 5);
  await other.jobs.remove(ID);
  const bytes = await backups.open(backup.name);
  if (bytes === null) throw new Error('no backup');
  await restore(backup.name, bytes, 'own');
  expect(planOf(other.jobs.get(ID))).toEqual(plan);
  expect(partsOf(other)).toEqual(before);
  await other.close();
});

test('an archive whose last plan is not whole is refused, and nothing has changed', async () => {
  const { store } = await refused();
  const lines: string[] = [];
  for await (const line of archiveLines(store, 'later')) lines.push(line);
  await store.close();
  const cut = lines.filter((line) => !line.startsWith('{"alike"'));
  expect(cut.length).toBeLessThan(lines.length);
  const folder = freshFolder();
  const other = await openStore(folder, disk, 'later');
  const restore = restoringInto(disk, folder, other, new Backups(disk, folder), 'later');
  await expect(
    restore(
      'archive',
      (async function* () {
        yield Buffer.from(summed(cut));
      })(),
      'foreign',
    ),
  ).rejects.toThrow(/the last plan of the job boot-room is not whole/);
  expect(other.jobs.all()).toEqual([]);
  await other.close();
});

test('stickers printed from a file are held against a job that needs attention too', async () => {
  const { folder, store, plan } = await refused();
  await store.close();
  const known = plan as Parameters<typeof codesKnown>[0];
  expect(await codesKnown(known, folder)).toEqual({ ok: true, unknown: [] });
  const foreign = {
    ...known,
    doors: known.doors.map((door) => ({
      ...door,
      parts: door.parts.map((part) => ({ ...part, code: `${part.code}X` })),
    })),
  };
  expect(await codesKnown(foreign, folder)).toMatchObject({ ok: true, unknown: { length: 10 } });
});

/** The lines with the sum that belongs to them. */
function summed(lines: readonly string[]): string {
  const body = lines.slice(0, -1).join('');
  const { end } = JSON.parse((lines.at(-1) ?? '').replace(/\n\]\n$/, '')) as { end: object };
  return `${body}${JSON.stringify({ end: { ...end, sum: crc32(body) } })}\n]\n`;
}
