import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { revisionsAnswer } from '#core/api/revisions-api.ts';
import { pastName } from '#main/store/documents/job-document.ts';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { type Answer, type LiveHub, liveHub } from './live-hub.ts';

const wide = (width: string) => ({
  ...SMALL_JOB,
  doors: [{ ...SMALL_JOB.doors[0], opening: { width, height: '30' } }],
});

function save({ ask }: LiveHub, revision: number, width: string, by?: string): Promise<Answer> {
  return ask('PUT', '/jobs/boot-room', { revision, file: wide(width), ...(by === undefined ? {} : { by }) });
}

async function revisions({ ask }: LiveHub): Promise<ReturnType<typeof revisionsAnswer.parse>> {
  return revisionsAnswer.parse((await ask('GET', '/jobs/boot-room/revisions')).body);
}

const planOf = async ({ ask }: LiveHub) => (await ask('GET', '/jobs/boot-room')).body;

test('every save is told with who, when and what it changed, and can be gone back to as it was', async () => {
  const live = await liveHub();
  await live.ask('POST', '/jobs', SMALL_JOB);
  const first = await planOf(live);
  await save(live, 1, '17', 'P-ADA');
  const measured = { doors: { 'LOCKER-1': { thickness: '13/16' } } };
  await live.ask('PUT', '/jobs/boot-room/measured', { revision: 2, measured });
  const { current, revisions: told } = await revisions(live);
  expect(current).toBe(3);
  expect(told).toMatchObject([
    {
      revision: 3,
      kept: false,
      changes: [{ field: 'measured.doors.LOCKER-1.thickness', now: '13/16' }],
    },
    {
      revision: 2,
      by: 'P-ADA',
      kept: true,
      changes: [{ mark: 'LOCKER', field: 'opening.width', was: '16', now: '17' }],
    },
    { revision: 1, kept: true, changes: [] },
  ]);
  expect(told.every(({ at }) => at !== null && Date.parse(at) > 0)).toBe(true);
  const back = await live.ask('POST', '/jobs/boot-room/revisions/1/restore', { revision: 3, by: 'P-BEN' });
  expect([back.status, back.body.revision, back.body.disagreeing]).toEqual([200, 4, 0]);
  await live.restart();
  expect(await planOf(live)).toEqual(first);
  expect((await live.ask('GET', '/jobs/boot-room/file')).body).toMatchObject({ revision: 4, measured: {} });
  expect((await revisions(live)).revisions[0]).toMatchObject({
    revision: 4,
    by: 'P-BEN',
    back: 1,
    changes: [
      { mark: 'LOCKER', field: 'opening.width', was: '17', now: '16' },
      { field: 'measured.doors.LOCKER-1.thickness', was: '13/16' },
    ],
  });
});

test('going back is a save like any other: a dry run tells what is cut already, a stale one and an unknown one are refused', async () => {
  const live = await liveHub();
  const saved = await live.ask('POST', '/jobs', SMALL_JOB);
  await save(live, 1, '17');
  const rail = (saved.body.parts as { code: string; part: string }[]).find(({ part }) => part === 'rail-top');
  await live.ask('POST', '/marks', milled(rail?.code ?? ''));
  const go = (path: string, revision = 2) =>
    live.ask('POST', `/jobs/boot-room/revisions/${path}`, { revision });
  expect((await go('1/restore?dry=1')).body).toMatchObject({
    revision: 2,
    disagreeing: 1,
    disagree: [{ door: 'LOCKER-1', part: 'rail-top', name: 'length' }],
  });
  expect((await revisions(live)).current).toBe(2);
  expect(await go('1/restore', 1)).toMatchObject({ status: 409, body: { code: 'stale' } });
  for (const wrong of ['2', '3', '0', 'x', '1e0', '..%2f1'])
    expect(await go(`${wrong}/restore`), wrong).toMatchObject({
      status: 404,
      body: { code: 'revision-unknown' },
    });
  expect((await go('1/restore')).body).toMatchObject({ revision: 3, disagreeing: 1 });
  expect((await live.ask('GET', '/jobs/boot-room/file')).body.asMarked).toHaveLength(1);
});

test('twenty earlier revisions are kept and no more, and go with the job, into an archive and for good', async () => {
  const live = await liveHub();
  await live.ask('POST', '/jobs', SMALL_JOB);
  for (let revision = 1; revision < 25; revision += 1) await save(live, revision, String(10 + revision));
  const kept = async (from: LiveHub) =>
    (await revisions(from)).revisions.filter((each) => each.kept).map(({ revision }) => revision);
  const twenty = Array.from({ length: 20 }, (_, k) => 24 - k);
  expect(await kept(live)).toEqual(twenty);
  expect(readdirSync(join(live.data, 'jobs')).filter((name) => /\.r\d+\.json$/.test(name))).toHaveLength(20);
  const other = await liveHub();
  const file = await (await fetch(`${live.hub.url}/api/export`)).text();
  expect((await other.ask('POST', '/import', file)).status).toBe(200);
  expect(await kept(other)).toEqual(twenty);
  expect((await other.ask('POST', '/jobs/boot-room/revisions/5/restore', { revision: 25 })).status).toBe(200);
  expect((await other.ask('GET', '/jobs/boot-room/file')).body).toMatchObject({
    file: { doors: [{ opening: { width: '14' } }] },
  });
  await live.ask('DELETE', '/jobs/boot-room');
  await live.ask('POST', '/bin/boot-room/restore', {});
  expect(await kept(live)).toEqual(twenty);
  await live.ask('DELETE', '/jobs/boot-room');
  await live.ask('DELETE', '/bin/boot-room');
  expect(readdirSync(join(live.data, 'jobs'))).toEqual([]);
});

test('a revision whose file was cut short is refused as a whole, nothing is changed, and a backup goes on without it', async () => {
  const live = await liveHub();
  await live.ask('POST', '/jobs', SMALL_JOB);
  await save(live, 1, '17');
  const path = join(live.data, 'jobs', pastName('boot-room', 1));
  expect(existsSync(path)).toBe(true);
  writeFileSync(path, readFileSync(path).subarray(0, 200));
  const told = await live.ask('POST', '/jobs/boot-room/revisions/1/restore', { revision: 2 });
  expect([told.status, told.body.code]).toEqual([404, 'revision-unknown']);
  expect((await revisions(live)).current).toBe(2);
  expect((await live.ask('POST', '/backups', {})).status).toBe(201);
});
