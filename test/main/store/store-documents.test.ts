import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DOCUMENT_FORMAT, documentName, pastName } from '#main/store/documents/job-document.ts';
import { unsealed } from '#main/store/files/seal.ts';
import { freshFolder } from './fresh-folder.ts';
import { openStore, partsOf, SMALL_JOB, smallShop, planOf } from './small-shop.ts';
import { tryingPort } from './trying-port.ts';

test('a job’s earlier revision, its document and then its plan with its index are written aside, flushed, renamed, and the folder flushed', async () => {
  const port = tryingPort();
  const store = await smallShop(freshFolder(), port);
  port.steps.splice(0);
  await store.jobs.update('boot-room', 1, SMALL_JOB);
  const name = documentName('boot-room');
  const plan = name.replace('.json', '.plan');
  const past = pastName('boot-room', 1);
  expect(port.steps.filter((step, k, all) => step !== all[k - 1])).toEqual([
    `create .${past}.new`,
    `write .${past}.new`,
    `flush .${past}.new`,
    `rename ${past}`,
    'folder jobs',
    ...[name, plan, name.replace('.json', '.index')].flatMap((each) => [
      `create .${each}.new`,
      `write .${each}.new`,
      `flush .${each}.new`,
      `rename ${each}`,
      'folder jobs',
    ]),
  ]);
  await store.close();
});

test('a job of the first format is taken up, and written in today’s', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  await store.close();
  const path = join(folder, 'jobs', documentName('boot-room'));
  const {
    added: _added,
    measured: _measured,
    asMarked: _asMarked,
    ...rest
  } = JSON.parse(unsealed(readFileSync(path, 'utf8'))) as Record<string, unknown>;
  const first = JSON.stringify({ ...rest, format: 1 });
  writeFileSync(path, first);
  const again = await openStore(folder);
  expect(again.jobs.get('boot-room')?.document).toMatchObject({
    format: DOCUMENT_FORMAT,
    added: null,
    measured: {},
    asMarked: [],
  });
  expect(JSON.parse(unsealed(readFileSync(path, 'utf8')))).toEqual(again.jobs.get('boot-room')?.document);
  await again.close();
});

test('an unreadable document is kept aside and reported, and the rest is there', async () => {
  const folder = freshFolder();
  await (await smallShop(folder)).close();
  const name = documentName('boot-room');
  writeFileSync(join(folder, 'jobs', name), '{"format":2,"id":"boot');
  writeFileSync(join(folder, 'shop.json'), 'nonsense');
  const store = await openStore(folder);
  expect(store.jobs.all()).toEqual([]);
  expect(store.jobs.troubles).toMatchObject([{ file: name, kept: `${name}.unreadable` }]);
  expect(store.shop.trouble).toMatchObject({ file: 'shop.json', kept: 'shop.json.unreadable' });
  expect(readFileSync(join(folder, 'jobs', `${name}.unreadable`), 'utf8')).toBe('{"format":2,"id":"boot');
  expect(existsSync(join(folder, 'shop.json'))).toBe(false);
  await store.close();
});

test('sizes as cut plan a job anew, keep its file and codes, and are converted with its units', async () => {
  const store = await smallShop(freshFolder());
  const before = partsOf(store);
  const measured = await store.jobs.measure('boot-room', 1, { thickness: '13/16' });
  expect(measured).toMatchObject({
    kind: 'changed',
    stored: { document: { revision: 2, file: SMALL_JOB } },
  });
  expect(planOf(store.jobs.get('boot-room')).doors[0]?.parts[0]?.thickness).toBe('13/16');
  expect(partsOf(store)).toEqual(before);
  expect(await store.jobs.measure('boot-room', 1, {})).toEqual({ kind: 'stale', revision: 2 });
  expect(await store.jobs.measure('boot-room', 2, { thickness: 'thick' })).toMatchObject({ kind: 'faults' });
  const metric = {
    ...SMALL_JOB,
    units: 'mm',
    doors: [{ mark: 'LOCKER', opening: { width: '400', height: '700' } }],
  };
  expect(await store.jobs.update('boot-room', 2, metric, { dry: true })).toMatchObject({ kind: 'changed' });
  expect(store.jobs.get('boot-room')?.document.revision).toBe(2);
  await store.jobs.update('boot-room', 2, metric);
  expect(store.jobs.get('boot-room')?.document.measured).toEqual({ thickness: '20.6375' });
  await store.close();
});
