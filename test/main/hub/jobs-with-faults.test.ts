import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { unsealed } from '#main/store/files/seal.ts';
import type { JobLine } from '#core/api/jobs-api.ts';
import { liveHub } from './live-hub.ts';

const JOB = {
  format: 1,
  id: 'boot-room',
  job: 'Millbrook boot room',
  units: 'in',
  doors: [{ mark: 'LOCKER', quantity: 2, opening: { width: '16', height: '30' } }],
};

/** A hub with a job that the version before has planned and that this one refuses: none of its chisels is narrow enough. */
async function hubThatRefuses() {
  const hub = await liveHub();
  await hub.ask('POST', '/jobs', JOB);
  const { body: plan } = await hub.ask('GET', '/jobs/boot-room');
  await hub.hub.stop();
  const jobs = join(hub.data, 'jobs');
  const path = join(jobs, readdirSync(jobs).find((name) => name.endsWith('.json')) ?? '');
  const document = JSON.parse(unsealed(readFileSync(path, 'utf8'))) as { profile: object };
  writeFileSync(path, JSON.stringify({ ...document, profile: { ...document.profile, chisels: ['2'] } }));
  await hub.start();
  return { hub, plan };
}

test('a job that this version refuses is listed with its faults, and everything shows its last plan', async () => {
  const { hub, plan } = await hubThatRefuses();
  const { body } = await hub.ask('GET', '/jobs');
  const [line] = body.jobs as JobLine[];
  expect(line).toMatchObject({ id: 'boot-room', doors: 2, left: 2 });
  expect(line?.faults?.map(({ path, code }) => [path, code])).toEqual([
    ['doors[0].groove.width', 'no-chisel'],
  ]);
  expect((await hub.ask('GET', '/jobs/boot-room')).body).toEqual(plan);
  expect((await hub.ask('GET', '/jobs/boot-room?why=1')).body).toEqual(plan);
  const { code } = (plan.doors as { parts: { code: string }[] }[])[0]?.parts[0] ?? { code: '' };
  expect((await hub.ask('GET', `/parts/${code}?station=milling`)).body).toMatchObject({
    here: { stage: 'mill' },
  });
  expect((await hub.ask('GET', '/board')).body.doors).toMatchObject([
    { door: 'LOCKER-1', stage: 'mill' },
    { door: 'LOCKER-2', stage: 'mill' },
  ]);
  for (const paper of [
    'stickers.pdf',
    'papers.pdf?kind=cards',
    'papers.pdf?kind=rods',
    'papers.pdf?kind=sheet',
  ])
    expect((await hub.ask('GET', `/jobs/boot-room/${paper}`)).status, paper).toBe(200);
  expect((await hub.ask('GET', '/health')).body).toMatchObject({ ok: true, more: { aside: [] } });
});

test('it is corrected by a save in the office, and then listed without faults under the same codes', async () => {
  const { hub, plan } = await hubThatRefuses();
  const { revision, file } = (await hub.ask('GET', '/jobs/boot-room/file')).body;
  const saved = await hub.ask('PUT', '/jobs/boot-room', { revision, file });
  expect(saved).toMatchObject({ status: 200, body: { lost: [], disagreeing: 0 } });
  const [line] = (await hub.ask('GET', '/jobs')).body.jobs as JobLine[];
  expect(line).not.toHaveProperty('faults');
  expect((await hub.ask('GET', '/jobs/boot-room')).body).toEqual(plan);
});

test('the file of a saved job names every measure, and saved again it plans the same', async () => {
  const hub = await liveHub();
  await hub.ask('POST', '/jobs', JOB);
  const { body: plan } = await hub.ask('GET', '/jobs/boot-room');
  const { file, revision } = (await hub.ask('GET', '/jobs/boot-room/file')).body;
  expect(file).toMatchObject({ doors: JOB.doors, defaults: { thickness: '3/4', horn: '1/2', arch: null } });
  await hub.ask('PUT', '/jobs/boot-room', { revision, file });
  expect((await hub.ask('GET', '/jobs/boot-room/file')).body.file).toEqual(file);
  expect((await hub.ask('GET', '/jobs/boot-room')).body).toEqual(plan);
});
