import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { printLength } from '#core/length/print-length.ts';
import { readJob } from '#core/job/read-job.ts';
import { DOCUMENT_FORMAT, documentName, readJobDocument } from '#main/store/documents/job-document.ts';
import { planDocument } from '#main/store/documents/plan-document.ts';
import { freshFolder } from './fresh-folder.ts';
import { openStore, SMALL_JOB, smallShop, planOf } from './small-shop.ts';
import { tryingPort } from './trying-port.ts';

/** A job's document as version 0.1.0 wrote it. */
function thirdForm(file: object): string {
  return JSON.stringify({
    format: 3,
    id: 'boot-room',
    revision: 1,
    added: '2026-11-25T08:00:00.000Z',
    file,
    profile: {},
    measured: {},
    asMarked: [],
  });
}

function specOf(file: unknown, door = 0) {
  const read = readJob(file);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const spec = read.value.doors[door]?.spec;
  if (spec === undefined) throw new Error('no door');
  return spec;
}

test('a sparse job in inches keeps the measures of the day it was saved', () => {
  const { format, file } = readJobDocument(
    thirdForm({ ...SMALL_JOB, defaults: { stile: { width: '1 1/2' } } }),
  );
  expect(format).toBe(DOCUMENT_FORMAT);
  expect(file.doors).toEqual(SMALL_JOB.doors);
  expect(file.defaults).toEqual({
    stile: { width: '1 1/2' },
    oversize: { width: '0', height: '0' },
    reveal: '1/16',
    thickness: '3/4',
    bottomRail: { width: '2 3/4' },
    topRail: { width: '2 1/4' },
    bead: '3/16',
    hinge: 'left',
    groove: { width: '1/4', depth: '1/4' },
    tenon: { length: '1', outerSetback: '1/4', innerSetback: '1/4', haunchClearance: '0' },
    mortise: { clearance: '1/16', endPlay: '1/32' },
    horn: '1/2',
    panel: { thickness: '3/8', clearance: '1/16' },
    arch: null,
    midRails: [],
  });
});

test('a sparse job in millimetres keeps the measures of the day it was saved', () => {
  const { file } = readJobDocument(
    thirdForm({
      format: 1,
      job: 'Quay',
      units: 'mm',
      doors: [{ mark: 'A', opening: { width: 400, height: 700 } }],
    }),
  );
  expect(file.defaults).toEqual({
    oversize: { width: '0', height: '0' },
    reveal: '1.5',
    thickness: '19',
    stile: { width: '57' },
    bottomRail: { width: '70' },
    topRail: { width: '57' },
    bead: '5',
    hinge: 'left',
    groove: { width: '6', depth: '7' },
    tenon: { length: '25', outerSetback: '6', innerSetback: '6', haunchClearance: '0' },
    mortise: { clearance: '1.5', endPlay: '0.8' },
    horn: '12',
    panel: { thickness: '10', clearance: '1.5' },
    arch: null,
    midRails: [],
  });
  expect(printLength(specOf(file).mortise.endPlay)).toBe('4/5');
});

test('groups that a job or a door gives in part are filled up, in its own words where it has some', () => {
  const { file } = readJobDocument(
    thirdForm({
      ...SMALL_JOB,
      defaults: {
        tenon: { length: '1-1/8' },
        panel: { species: 'oak, red' },
        arch: { rise: 1.5 },
        midRails: [{ width: '3', centre: 14 }],
      },
      doors: [
        {
          mark: 'A',
          opening: { width: '16', height: '30' },
          arch: { flat: '3/4' },
          tenon: { outerSetback: '3/8' },
        },
        { mark: 'B', opening: { width: '16', height: '30' }, arch: null, midRails: [] },
      ],
    }),
  );
  expect(file.defaults).toMatchObject({
    tenon: { length: '1-1/8', outerSetback: '1/4', innerSetback: '1/4', haunchClearance: '0' },
    panel: { species: 'oak, red', thickness: '3/8', clearance: '1/16' },
    arch: { rise: 1.5 },
    midRails: [{ width: '3', centre: 14 }],
  });
  const [arched, square] = [specOf(file), specOf(file, 1)];
  expect(
    [arched.arch?.rise, arched.arch?.flat, arched.tenon.length, arched.tenon.outerSetback].map(
      (each) => each && printLength(each),
    ),
  ).toEqual(['1 1/2', '3/4', '1 1/8', '3/8']);
  expect([square.arch, square.midRails.length]).toEqual([null, 0]);
  expect(square).not.toHaveProperty('survey');
  expect(square.panel).not.toHaveProperty('sawn');
});

test('a job that is saved now names every measure, so that no later built-in one reaches it', async () => {
  const folder = freshFolder();
  const store = await smallShop(folder);
  const named = (): object =>
    (JSON.parse(readFileSync(join(folder, 'jobs', documentName('boot-room')), 'utf8')) as { file: object })
      .file;
  expect(named()).toMatchObject({ defaults: { thickness: '3/4', horn: '1/2', midRails: [], arch: null } });
  await store.jobs.update('boot-room', 1, { ...SMALL_JOB, defaults: { horn: '3/4' } });
  expect(named()).toMatchObject({ defaults: { thickness: '3/4', horn: '3/4', midRails: [], arch: null } });
  await store.close();
});

/** A folder with a job and a shop as version 0.1.0 left them. */
async function olderFolder(): Promise<{ folder: string; path: string; text: string; shop: string }> {
  const folder = freshFolder();
  const store = await smallShop(folder);
  await store.shop.update(0, store.shop.document.shop);
  const { profile } = store.jobs.get('boot-room')?.document ?? { profile: {} };
  await store.close();
  const path = join(folder, 'jobs', documentName('boot-room'));
  const text = JSON.stringify({ ...(JSON.parse(thirdForm(SMALL_JOB)) as object), profile });
  writeFileSync(path, text);
  return { folder, path, text, shop: readFileSync(join(folder, 'shop.json'), 'utf8') };
}

test('documents in an older form are copied as they were, once, and then written in today’s', async () => {
  const { folder, path, text, shop } = await olderFolder();
  const store = await openStore(folder);
  expect(store.found.copied).toBe('before-test');
  expect(readFileSync(join(folder, 'before-test', 'jobs', documentName('boot-room')), 'utf8')).toBe(text);
  expect(readFileSync(join(folder, 'before-test', 'shop.json'), 'utf8')).toBe(shop);
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ format: DOCUMENT_FORMAT, revision: 1 });
  await store.close();
  const again = await openStore(folder);
  expect(again.found.copied).toBeNull();
  await again.close();
  writeFileSync(path, text);
  const back = await openStore(folder);
  expect(back.found.copied).toBeNull();
  await back.close();
  writeFileSync(path, text.replace('"revision":1', '"revision":2'));
  const later = await openStore(folder);
  expect(later.found.copied).toBe('before-test-2');
  expect(readFileSync(join(folder, 'before-test', 'jobs', documentName('boot-room')), 'utf8')).toBe(text);
  await later.close();
});

test('the plug pulled at any step of the first start of a version leaves the way back whole', async () => {
  for (let stop = 0; ; stop += 1) {
    const { folder, path, text, shop } = await olderFolder();
    const port = tryingPort();
    let step = 0;
    let pulled = '';
    port.before = (what) => {
      if (pulled === '' && step++ < stop) return;
      pulled ||= what;
      throw new Error('the plug');
    };
    const opened = await openStore(folder, port).catch(() => null);
    await opened?.close().catch(() => undefined);
    const copy = join(folder, 'before-test');
    if (readFileSync(path, 'utf8') !== text) expect(existsSync(copy), pulled).toBe(true);
    if (existsSync(copy)) {
      expect(readFileSync(join(copy, 'jobs', documentName('boot-room')), 'utf8'), pulled).toBe(text);
      expect(readFileSync(join(copy, 'shop.json'), 'utf8'), pulled).toBe(shop);
    }
    const store = await openStore(folder);
    expect(
      readdirSync(folder).filter((name) => name.startsWith('before')),
      pulled,
    ).toEqual(['before-test']);
    expect(JSON.parse(readFileSync(path, 'utf8')), pulled).toMatchObject({ format: DOCUMENT_FORMAT });
    await store.close();
    if (pulled === '') return;
  }
});

test('a disk without room for the copy: all is shown as it is, nothing is taken, and nothing of the documents is changed', async () => {
  const { folder, path, text } = await olderFolder();
  const port = tryingPort();
  port.break('write', 'ENOSPC', /boot|\.new$/);
  const store = await openStore(folder, port);
  expect(planOf(store.jobs.get('boot-room')).doors).toHaveLength(2);
  expect(store.troubles).toMatchObject([{ code: 'cannot-write' }]);
  expect(store.troubles[0]?.figures.reason).toMatch(
    /are to be copied before version test writes them in its form, and could not be: ENOSPC/,
  );
  await store.close();
  expect(readFileSync(path, 'utf8')).toBe(text);
});

/** A document of the fourth form whose doors are of two thicknesses and one groove. */
function fourthForm(measured: object, ...thicknesses: string[]): string {
  const doors = thicknesses.map((thickness, k) => ({
    mark: `D${k}`,
    opening: { width: '16', height: '30' },
    thickness,
  }));
  const file = { format: 1, job: 'Boot room', units: 'in', doors };
  return JSON.stringify({ ...(JSON.parse(thirdForm(file)) as object), format: 4, measured });
}

test('one measured length over doors of several sizes is said of each of them, and plans what it planned', () => {
  const measured = { thickness: '25/32', grooveWidth: '17/64', doors: { 'D0-1': { thickness: '3/4' } } };
  const document = readJobDocument(fourthForm(measured, '3/4', '13/16', '0.75'));
  expect(document.measured).toEqual({
    thickness: [
      { of: '3/4', is: '25/32' },
      { of: '13/16', is: '25/32' },
    ],
    grooveWidth: '17/64',
    doors: { 'D0-1': { thickness: '3/4' } },
  });
  const plan = planDocument(document);
  const thick = plan.ok ? plan.value.doors.map(({ parts }) => parts[0]?.thickness) : plan.faults;
  expect(thick).toEqual(['3/4', '25/32', '25/32']);
});

test('one measured length over doors of one size, and nothing measured, stay as they were', () => {
  expect(readJobDocument(fourthForm({ thickness: '25/32' }, '3/4', '3/4')).measured).toEqual({
    thickness: '25/32',
  });
  expect(readJobDocument(fourthForm({}, '3/4', '13/16')).measured).toEqual({});
  const unread = { ...(JSON.parse(fourthForm({ thickness: '1' }, '3/4')) as object), file: { job: 1 } };
  expect(readJobDocument(JSON.stringify(unread)).measured).toEqual({ thickness: '1' });
});
