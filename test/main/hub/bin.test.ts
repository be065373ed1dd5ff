import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { binAnswer } from '#core/api/bin-api.ts';
import { documentName } from '#main/store/documents/job-document.ts';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { type LiveHub, liveHub } from './live-hub.ts';

/** A job with a mark, a scrapped blank and a printed sticker, put into the bin. */
async function binned(live: LiveHub): Promise<{
  readonly codes: readonly string[];
  readonly before: readonly unknown[];
  readonly mark: ReturnType<typeof milled>;
  readonly replacement: string;
}> {
  const saved = await live.ask('POST', '/jobs', SMALL_JOB);
  const codes = (saved.body.parts as { code: string }[]).map(({ code }) => code);
  const mark = milled(codes[0] ?? '');
  expect((await live.ask('POST', '/marks', mark)).status).toBe(200);
  const spoiled = await live.ask(
    'POST',
    '/marks',
    milled(codes[1] ?? '', { mark: 'spoiled', reason: 'a knot' }),
  );
  await live.ask('POST', '/jobs/boot-room/printed', { codes: codes.slice(0, 1), stock: 'a4-3x8' });
  const before = await told(live);
  expect((await live.ask('DELETE', '/jobs/boot-room')).status).toBe(204);
  return { codes, before, mark, replacement: String(spoiled.body.replacement) };
}

async function told({ ask }: LiveHub): Promise<unknown[]> {
  const paths = ['/jobs', '/board', '/stickers'].concat(
    ['', '/file', '/progress', '/printed'].map((path) => `/jobs/boot-room${path}`),
  );
  return Promise.all(paths.map(async (path) => (await ask('GET', path)).body));
}

async function bin({ ask }: LiveHub): Promise<ReturnType<typeof binAnswer.parse>['jobs']> {
  return binAnswer.parse((await ask('GET', '/bin')).body).jobs;
}

test('a job goes to the bin and comes back under its id with codes, marks, prints and place, over restarts', async () => {
  const live = await liveHub();
  await live.ask('POST', '/jobs', { ...SMALL_JOB, id: 'first', job: 'First' });
  const { before } = await binned(live);
  await live.ask('POST', '/jobs', { ...SMALL_JOB, id: 'last', job: 'Last' });
  await live.restart();
  expect(await bin(live)).toMatchObject([
    { id: 'boot-room', job: SMALL_JOB.job, doors: 2, marks: 2, begun: 1, finished: 0, printed: 1 },
  ]);
  for (const path of ['', '/file', '/progress', '/printed', '/stickers.pdf'])
    expect((await live.ask('GET', `/jobs/boot-room${path}`)).body.code, path).toBe('job-binned');
  expect(((await live.ask('GET', '/jobs')).body.jobs as { id: string }[]).map(({ id }) => id)).toEqual([
    'first',
    'last',
  ]);
  await live.restart();
  const back = await live.ask('POST', '/bin/boot-room/restore', {});
  expect([back.status, back.body]).toEqual([200, { id: 'boot-room', job: SMALL_JOB.job, revision: 1 }]);
  await live.ask('DELETE', '/jobs/last');
  expect(await told(live)).toEqual(before);
  await live.restart();
  expect(await told(live)).toEqual(before);
  expect((await live.ask('POST', '/bin/boot-room/restore', {})).body.code).toBe('bin-unknown');
  expect((await live.ask('GET', '/health')).body).toMatchObject({ ok: true, troubles: [] });
});

test('a binned job’s sticker says so, of a replacement too, and its marks are refused by the same code', async () => {
  const live = await liveHub();
  const { codes, mark, replacement } = await binned(live);
  for (const code of [codes[0] ?? '', codes[9] ?? '', replacement])
    expect((await live.ask('GET', `/parts/${code}?station=milling`)).body).toMatchObject({
      code: 'binned',
      message: `The job of part ${code} is in the bin.`,
    });
  const kept = milled(codes[3] ?? '');
  const refused = await live.ask('POST', '/marks', kept);
  expect([refused.status, refused.body.code]).toEqual([409, 'binned']);
  // What was answered before is answered again, though its answer was lost on the way and the job is gone meanwhile.
  expect((await live.ask('POST', '/marks', mark)).status).toBe(200);
  // What a station kept counts once the job is back.
  await live.ask('POST', '/bin/boot-room/restore', {});
  expect((await live.ask('POST', '/marks', kept)).status).toBe(200);
  const unknown = await live.ask('GET', '/parts/AAAAAAAAAA');
  expect(unknown.body.code).not.toBe('binned');
});

test('the id and the codes of a job in the bin are not given again', async () => {
  const live = await liveHub();
  const { codes } = await binned(live);
  const again = await live.ask('POST', '/jobs', SMALL_JOB);
  expect(again.body).toMatchObject({ codesChanged: true });
  expect(again.body.id).not.toBe('boot-room');
  const fresh = (again.body.parts as { code: string }[]).map(({ code }) => code);
  expect(fresh.filter((code) => codes.includes(code))).toEqual([]);
});

test('one that nothing was done of is not given again either, though nothing of it stands in the log', async () => {
  const live = await liveHub();
  await live.ask('POST', '/jobs', SMALL_JOB);
  await live.ask('DELETE', '/jobs/boot-room');
  expect((await live.ask('POST', '/jobs', SMALL_JOB)).body).toMatchObject({ codesChanged: true });
  await live.ask('DELETE', '/bin/boot-room');
  await live.restart();
  expect((await live.ask('POST', '/jobs', SMALL_JOB)).body).toMatchObject({ id: 'boot-room' });
});

test('taken away for good, a job is gone with its files, and is not missed at the next start', async () => {
  const live = await liveHub();
  const { codes } = await binned(live);
  expect((await live.ask('DELETE', '/bin/boot-room')).status).toBe(204);
  expect((await live.ask('DELETE', '/bin/boot-room')).body.code).toBe('bin-unknown');
  expect(await bin(live)).toEqual([]);
  expect(readdirSync(join(live.data, 'jobs'))).toEqual([]);
  expect((await live.ask('GET', `/parts/${codes[0]}`)).body.code).toBe('unknown-code');
  await live.restart();
  expect((await live.ask('GET', '/health')).body).toMatchObject({ ok: true, troubles: [] });
});

test('what is in the bin is missed when it is gone, and no job that runs is put away for good', async () => {
  const live = await liveHub();
  await binned(live);
  await live.ask('POST', '/jobs', { ...SMALL_JOB, id: 'runs', job: 'Runs' });
  expect((await live.ask('DELETE', '/bin/runs')).status).toBe(404);
  expect((await live.ask('GET', '/jobs/runs')).status).toBe(200);
  await live.hub.stop();
  rmSync(join(live.data, 'jobs', documentName('boot-room')));
  await live.start();
  expect((await live.ask('GET', '/health')).body).toMatchObject({
    ok: false,
    troubles: [{ code: 'jobs-gone', figures: { count: 1 } }],
  });
});

test('a backup and an export carry the bin', async () => {
  const live = await liveHub();
  const { before } = await binned(live);
  const backup = await live.ask('POST', '/backups', {});
  const file = await (await fetch(`${live.hub.url}/api/export`)).text();
  await live.ask('DELETE', '/bin/boot-room');
  const other = await liveHub();
  expect((await other.ask('POST', '/import', file)).body).toMatchObject({ jobs: 1 });
  expect((await live.ask('POST', `/backups/${String(backup.body.name)}/restore`, {})).status).toBe(200);
  for (const each of [live, other]) {
    expect(await bin(each)).toMatchObject([{ id: 'boot-room', marks: 2, printed: 1 }]);
    expect((await each.ask('GET', '/jobs')).body.jobs).toEqual([]);
    await each.ask('POST', '/bin/boot-room/restore', {});
    expect(await told(each)).toEqual(before);
    expect(existsSync(join(each.data, 'incoming'))).toBe(false);
  }
});

test('with a PIN the bin is looked at by everybody and changed by the office alone', async () => {
  const live = await liveHub();
  await binned(live);
  await live.ask('PUT', '/pin', { pin: '2468' });
  expect(await bin(live)).toHaveLength(1);
  expect((await live.ask('POST', '/bin/boot-room/restore', {})).body.code).toBe('pin-needed');
  expect((await live.ask('DELETE', '/bin/boot-room')).body.code).toBe('pin-needed');
});
