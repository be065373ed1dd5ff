import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { healthAnswer } from '#core/api/office-api.ts';
import { shopAnswer } from '#core/api/shop-api.ts';
import type { ShellMessage } from '#main/printing/shell-line.ts';
import { SMALL_JOB } from '../store/small-shop.ts';
import { type LiveHub, liveHub } from './live-hub.ts';

/** Sets the PIN and gives the cookie of who set it. */
async function withPin({ ask }: LiveHub, pin = '2468'): Promise<string> {
  const set = await ask('PUT', '/pin', { pin });
  expect(set.body).toEqual({ pin: true, open: true });
  return (set.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
}

test('with no PIN everything is open; with one the office’s writes need it, marks and screens do not', async () => {
  const live = await liveHub();
  expect((await live.ask('GET', '/session')).body).toEqual({ pin: false, open: true });
  const cookie = await withPin(live);
  const closed: [string, string, unknown?][] = [
    ['POST', '/jobs', SMALL_JOB],
    ['PUT', '/jobs/boot-room', { revision: 1, file: SMALL_JOB }],
    ['PUT', '/jobs/boot-room/measured', { revision: 1, measured: {} }],
    ['DELETE', '/jobs/boot-room'],
    ['POST', '/bin/boot-room/restore', {}],
    ['DELETE', '/bin/boot-room'],
    ['POST', '/jobs/boot-room/revisions/1/restore', { revision: 1 }],
    ['PUT', '/shop', {}],
    ['PUT', '/pin', { pin: null }],
    ['GET', '/backups'],
    ['POST', '/backups', {}],
    ['POST', '/backups/x/restore', {}],
    ['GET', '/export'],
    ['POST', '/import', '[]'],
    ['POST', '/kiosk/leave', {}],
  ];
  for (const [method, path, body] of closed) {
    const told = await live.ask(method, path, body);
    expect([told.status, told.body.code], `${method} ${path}`).toEqual([401, 'pin-needed']);
  }
  expect((await live.ask('POST', '/jobs', SMALL_JOB, { cookie })).status).toBe(201);
  for (const path of ['/jobs', '/board', '/shop', '/health', '/jobs/boot-room'])
    expect((await live.ask('GET', path)).status, path).toBe(200);
});

test('the session’s cookie can be read by no script and sent by no other site, and is worth nothing after it ends', async () => {
  const live = await liveHub();
  const first = await withPin(live);
  const right = await live.ask('POST', '/session', { pin: '2468' });
  expect(right.headers.get('set-cookie')).toMatch(
    /^shoulderline=[\w-]{43}; Path=\/api; HttpOnly; SameSite=Strict$/,
  );
  expect((await live.ask('GET', '/session', undefined, { cookie: first })).body).toEqual({
    pin: true,
    open: true,
  });
  await live.ask('DELETE', '/session', undefined, { cookie: first });
  expect((await live.ask('GET', '/session', undefined, { cookie: first })).body).toEqual({
    pin: true,
    open: false,
  });
  const second = (right.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
  await live.ask('PUT', '/pin', { pin: '13579' }, { cookie: second });
  expect((await live.ask('GET', '/session', undefined, { cookie: second })).body).toMatchObject({
    open: false,
  });
});

test('wrong tries are slowed, and a restart does not forget them', async () => {
  const live = await liveHub();
  await withPin(live);
  for (let k = 0; k < 3; k += 1)
    expect((await live.ask('POST', '/session', { pin: '0000' })).body).toMatchObject({ code: 'pin-wrong' });
  await live.restart();
  const told = await live.ask('POST', '/session', { pin: '2468' });
  expect([told.status, told.body.code]).toEqual([429, 'pin-wait']);
  expect(Number(told.headers.get('retry-after'))).toBeGreaterThan(0);
});

test('the PIN’s file holds no PIN, and neither does the hub’s own log or an export', async () => {
  const live = await liveHub();
  const cookie = await withPin(live, '86420975');
  expect(readFileSync(join(live.data, 'pin.json'), 'utf8')).not.toContain('86420975');
  const everything = await live.ask('GET', '/export', undefined, { cookie });
  expect(JSON.stringify(everything.body)).not.toMatch(/86420975|"salt"|"hash"/);
});

test('health is brief without the PIN and says more with it', async () => {
  const live = await liveHub();
  const cookie = await withPin(live);
  expect((await live.ask('GET', '/health')).body).toEqual({
    ok: true,
    network: 'off',
    version: 'test',
    seq: 1,
    troubles: [],
  });
  const { body } = await live.ask('GET', '/health', undefined, { cookie });
  const full = healthAnswer.parse(body);
  expect(full.more).toMatchObject({
    data: live.data,
    log: { lines: 1, trouble: null, damaged: [], torn: 0, strange: 0, knewMore: [] },
    lastBackup: null,
    lock: { pid: process.pid },
  });
  expect(full.more?.disk?.free).toBeGreaterThan(0);
});

test('the shop is saved over the revision seen, faults of its tools told by name, and jobs keep the tools of their day', async () => {
  const { ask } = await liveHub();
  await ask('POST', '/jobs', SMALL_JOB);
  const before = shopAnswer.parse((await ask('GET', '/shop')).body);
  const { revision, ...shop } = before;
  const changed = {
    ...shop,
    name: 'Millbrook',
    people: [{ id: 'ada', name: 'Ada', badge: 'P-ADA' }],
    profile: { ...shop.profile, chisels: ['1/4'] },
  };
  const saved = await ask('PUT', '/shop', { revision, shop: changed });
  expect(saved.body).toMatchObject({
    revision: revision + 1,
    name: 'Millbrook',
    profile: { chisels: ['1/4'] },
  });
  expect((await ask('PUT', '/shop', { revision, shop: changed })).status).toBe(409);
  const faulty = await ask('PUT', '/shop', {
    revision: revision + 1,
    shop: { ...changed, profile: { ...changed.profile, chisels: ['wide'] } },
  });
  expect(faulty.body.errors).toEqual([expect.objectContaining({ path: 'profile.chisels[0]' })]);
  const twice = [changed.people[0], changed.people[0]];
  expect(
    (await ask('PUT', '/shop', { revision: revision + 1, shop: { ...changed, people: twice } })).status,
  ).toBe(400);
  const metric = {
    format: 1,
    job: 'Metric',
    units: 'mm',
    doors: [{ mark: 'M', opening: { width: '400', height: '700' } }],
  };
  const mm = { ...shop.otherProfile, chisels: ['5'] };
  const both = await ask('PUT', '/shop', {
    revision: revision + 1,
    shop: { ...changed, otherProfile: mm },
  });
  expect(both.body).toMatchObject({ profile: { chisels: ['1/4'] }, otherProfile: { chisels: ['5'] } });
  const { otherProfile: _left, ...without } = changed;
  expect((await ask('PUT', '/shop', { revision: revision + 2, shop: without })).body).toMatchObject({
    otherProfile: { chisels: ['5'] },
  });
  const wrong = await ask('PUT', '/shop', {
    revision: revision + 3,
    shop: { ...changed, otherProfile: { ...mm, drums: ['0'] } },
  });
  expect(wrong.body.errors).toEqual([expect.objectContaining({ path: 'otherProfile.drums[0]' })]);
  await ask('POST', '/jobs', metric);
  expect(JSON.stringify((await ask('GET', '/jobs/Metric')).body)).toContain('"chisel":"5"');
  const plan = JSON.stringify((await ask('GET', '/jobs/boot-room')).body);
  await ask('PUT', '/jobs/boot-room', { revision: 1, file: SMALL_JOB });
  expect(JSON.stringify((await ask('GET', '/jobs/boot-room')).body)).toBe(plan);
});

test('sizes as cut answer with what was cut already and no longer agrees', async () => {
  const { ask } = await liveHub();
  const saved = await ask('POST', '/jobs', SMALL_JOB);
  const parts = saved.body.parts as { code: string; door: string; part: string }[];
  const rail = parts.find(({ door, part }) => door === 'LOCKER-1' && part === 'rail-top')?.code ?? '';
  await ask('POST', '/marks', {
    id: '00000000-0000-4000-8000-000000000001',
    code: rail,
    station: 'milling',
    stage: 'mill',
    mark: 'done',
    at: '2026-11-25T08:00:00Z',
  });
  const measured = { doors: { 'LOCKER-1': { parts: { 'stile-left': { width: '2 5/16' } } } } };
  const told = await ask('PUT', '/jobs/boot-room/measured', { revision: 1, measured });
  expect(told.body).toEqual({
    revision: 2,
    finished: [],
    outdated: 0,
    stickers: [],
    disagreeing: 1,
    disagree: [expect.objectContaining({ code: rail, stage: 'mill', name: 'length' })],
  });
  expect((await ask('GET', '/jobs/boot-room/file')).body).toMatchObject({ revision: 2, measured });
  expect((await ask('PUT', '/jobs/boot-room/measured', { revision: 1, measured })).status).toBe(409);
  const wrong = await ask('PUT', '/jobs/boot-room/measured', { revision: 2, measured: { thickness: '-1' } });
  expect(wrong.body.errors).toEqual([expect.objectContaining({ path: 'thickness', code: 'negative' })]);
});

test('printed stickers are noted, the second time as a reprint, also after a restart', async () => {
  const live = await liveHub();
  const saved = await live.ask('POST', '/jobs', SMALL_JOB);
  const code = (saved.body.parts as { code: string }[])[0]?.code ?? '';
  const note = { codes: [code], stock: 'a4-3x8', by: 'Ada' };
  await live.ask('POST', '/jobs/boot-room/printed', note);
  await live.ask('POST', '/jobs/boot-room/printed', note);
  await live.restart();
  const { body } = await live.ask('GET', '/jobs/boot-room/printed');
  expect((body.codes as Record<string, unknown[]>)[code]).toMatchObject([
    { stock: 'a4-3x8', by: 'Ada', reprint: false },
    { stock: 'a4-3x8', by: 'Ada', reprint: true },
  ]);
  expect((await live.ask('POST', '/jobs/boot-room/printed', { ...note, codes: ['AAAA'] })).status).toBe(404);
});

test('everything goes out in one file and comes back, from one shop to another', async () => {
  const from = await liveHub();
  await from.ask('POST', '/jobs', SMALL_JOB);
  const out = await fetch(`${from.hub.url}/api/export`);
  expect(out.headers.get('content-disposition')).toMatch(
    /^attachment; filename="shoulderline-[\d-]+\.json"$/,
  );
  const file = await out.text();
  const to = await liveHub();
  const told = await to.ask('POST', '/import', file);
  expect(told.body).toMatchObject({ jobs: 1, entries: 1 });
  expect((await to.ask('GET', '/jobs/boot-room')).body).toEqual(
    (await from.ask('GET', '/jobs/boot-room')).body,
  );
  expect((await to.ask('GET', '/backups')).body.backups).toMatchObject([{ name: told.body.before }]);
  const refused = await to.ask('POST', '/import', file.slice(0, -20));
  expect([refused.status, refused.body.code]).toEqual([400, 'archive']);
  const back = await to.ask('POST', `/backups/${String(told.body.before)}/restore`, {});
  expect(back.body).toMatchObject({ jobs: 0 });
  expect((await to.ask('GET', '/jobs')).body.jobs).toEqual([]);
  expect((await to.ask('POST', '/backups/..%2Fpin.json/restore', {})).status).toBe(404);
  expect(existsSync(join(to.data, 'incoming'))).toBe(false);
});

test('full screen is left through the shell, and only where there is one', async () => {
  const told: ShellMessage[] = [];
  const kiosk = await liveHub({ shell: { hear: () => undefined, tell: (message) => told.push(message) } });
  expect((await kiosk.ask('POST', '/kiosk/leave', {})).body).toEqual({ left: true });
  expect(told).toEqual([{ kind: 'leave-full-screen' }]);
  const alone = await liveHub();
  expect((await alone.ask('POST', '/kiosk/leave', {})).body.code).toBe('no-shell');
});
