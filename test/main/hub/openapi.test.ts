import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import pino from 'pino';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { type Endpoint, ENDPOINTS } from '#core/api/endpoints.ts';
import { openApi } from '#core/api/openapi.ts';
import { announcements } from '#main/hub/events.ts';
import { KeptSessions } from '#main/hub/kept-sessions.ts';
import { OfficeAccess } from '#main/hub/office-access.ts';
import { buildService } from '#main/hub/service.ts';
import { StationsSeen } from '#main/hub/stations-seen.ts';
import { NetworkDesk, NOTHING_TOLD } from '#main/network/network-desk.ts';
import { Backups } from '#main/store/archive/backups.ts';
import { ElsewhereBackups } from '#main/store/archive/elsewhere.ts';
import { disk } from '#main/store/files/disk.ts';
import { cups } from '#main/printing/cups.ts';
import { PrintDesk } from '#main/printing/print-desk.ts';
import { WorkDesk } from '#main/work/work-desk.ts';
import { PinStore } from '#main/store/documents/pin-store.ts';
import { restoringInto } from '#main/store/archive/restore.ts';
import { freshFolder } from '../store/fresh-folder.ts';
import { milled, openStore, SMALL_JOB } from '../store/small-shop.ts';
import { liveHub } from './live-hub.ts';

/** The addresses that the framework really serves, "GET /api/jobs/:id". */
async function routesServed(): Promise<string[]> {
  const folder = freshFolder();
  const store = await openStore(folder);
  const backups = new Backups(disk, folder);
  const pin = await PinStore.open(disk, join(folder, 'pin.json'));
  const announced = announcements(store, () => true);
  const seen = new StationsSeen(() => undefined);
  const { app } = await buildService(
    {
      port: disk,
      data: folder,
      version: 'test',
      store,
      pin,
      access: await OfficeAccess.open(pin, new KeptSessions(disk, folder)),
      announced,
      seen,
      network: await NetworkDesk.open({
        port: disk,
        data: folder,
        told: NOTHING_TOLD,
        pin: () => false,
        serve: () => Promise.reject(new Error('the network is off')),
        report: () => undefined,
        language: () => 'en',
        headerLimit: 1024,
      }),
      backups,
      elsewhere: await ElsewhereBackups.open(disk, disk, folder, backups, () => 5),
      clock: { trouble: null, stop: () => Promise.resolve() },
      held: {
        holder: { pid: 1, started: '', boot: '', space: '', token: '', host: '' },
        whyLost: () => null,
      },
      restore: restoringInto(disk, folder, store, backups, 'test'),
      shell: null,
      desk: new PrintDesk(cups()),
      work: new WorkDesk(null),
      logger: pino({ level: 'silent' }),
    },
    () => [],
  );
  const printed = app.printRoutes({ commonPrefix: false, includeHooks: false });
  await app.close();
  seen.close();
  announced.close();
  await store.close();
  const lines = printed.split('\n').filter((line) => line.includes('('));
  const path: string[] = [];
  return lines.flatMap((line) => {
    const at = line.search(/[^│├└─\s]/);
    const [, name = '', methods = ''] = /^(\S+) \((.+)\)/.exec(line.slice(at)) ?? [];
    path.splice(at / 4 - 1, path.length, name);
    return methods.split(', ').map((method) => `${method} ${path.join('')}`);
  });
}

test('the description names every address that is really served, and no other', async () => {
  const served = await routesServed();
  const described = Object.entries(openApi('test').paths as Record<string, object>).flatMap(
    ([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path.replace(/\{(\w+)\}/g, ':$1')}`),
  );
  expect(served.sort()).toEqual(described.sort());
});

test('the description is served, whole, and every address says what it does and gives', async () => {
  const { ask } = await liveHub();
  const { body } = await ask('GET', '/openapi.json');
  expect(body).toEqual(JSON.parse(JSON.stringify(openApi('test'))));
  expect(body.openapi).toBe('3.1.0');
  const operations = Object.values(
    body.paths as Record<string, Record<string, Record<string, unknown>>>,
  ).flatMap((methods) => Object.values(methods));
  expect(operations).toHaveLength(Object.keys(ENDPOINTS).length);
  for (const { summary, responses } of operations) {
    expect(String(summary)).toMatch(/^[A-Z].*[.?]/);
    expect(Object.keys(responses as object)).toContain('4XX');
  }
});

test('what is answered is what the description says, address by address', { timeout: 30_000 }, async () => {
  const { ask } = await liveHub();
  const told = new Map<string, unknown>();
  const tell = async (key: keyof typeof ENDPOINTS, path: string, body?: unknown) => {
    const endpoint: Endpoint = ENDPOINTS[key];
    const answer = await ask(key.split(' ')[0] ?? '', path, body);
    expect(answer.status, key).toBe(endpoint.status ?? 200);
    if (endpoint.gives instanceof z.ZodType) {
      // Every object as closed as the description can make it: nothing is answered that it does not name.
      const schema = z.fromJSONSchema(closed(z.toJSONSchema(endpoint.gives, { io: 'input' })));
      expect(schema.safeParse(answer.body).error?.issues, key).toBeUndefined();
    } else if (typeof endpoint.gives === 'string')
      expect(answer.headers.get('content-type'), key).toContain(endpoint.gives);
    told.set(key, answer.body);
    return answer.body;
  };
  const saved = await tell('POST /jobs', '/jobs', SMALL_JOB);
  const code = (saved.parts as { code: string }[])[0]?.code ?? '';
  await tell('GET /jobs', '/jobs');
  await tell('POST /marks', '/marks', milled(code));
  await tell('GET /jobs/:id', '/jobs/boot-room?why=1');
  await tell('GET /jobs/:id/doors', '/jobs/boot-room/doors');
  await tell('GET /jobs/:id/doors/:door', '/jobs/boot-room/doors/LOCKER-1?why=1');
  await tell('GET /jobs/:id/file', '/jobs/boot-room/file');
  const [door] = SMALL_JOB.doors;
  const changed = { ...SMALL_JOB, doors: [{ ...door, mark: 'OTHER' }] };
  expect(await tell('PUT /jobs/:id', '/jobs/boot-room?dry=1', { revision: 1, file: changed })).toMatchObject({
    lost: [{ door: 'LOCKER-1' }],
  });
  const wider = { ...SMALL_JOB, doors: [{ ...door, opening: { width: '17', height: '31' } }] };
  expect(await tell('PUT /jobs/:id', '/jobs/boot-room', { revision: 1, file: wider })).toMatchObject({
    disagreeing: 1,
  });
  expect((await tell('GET /jobs/:id/file', '/jobs/boot-room/file')).asMarked).toHaveLength(1);
  await tell('PUT /jobs/:id/measured', '/jobs/boot-room/measured', {
    revision: 2,
    measured: { doors: { 'LOCKER-1': { thickness: '13/16' } } },
  });
  await tell('GET /jobs/:id/revisions', '/jobs/boot-room/revisions');
  await tell('POST /jobs/:id/revisions/:revision/restore', '/jobs/boot-room/revisions/1/restore', {
    revision: 3,
  });
  await tell('GET /jobs/:id/progress', '/jobs/boot-room/progress');
  await tell('GET /jobs/:id/stickers.pdf', '/jobs/boot-room/stickers.pdf?stock=a4-3x8');
  await tell('POST /jobs/:id/printed', '/jobs/boot-room/printed', { codes: [code], stock: 'a4-3x8' });
  await tell('GET /jobs/:id/printed', '/jobs/boot-room/printed');
  await tell('GET /jobs/:id/papers.pdf', '/jobs/boot-room/papers.pdf?kind=sheet&paper=a4');
  await tell('GET /stickers', '/stickers');
  await tell('GET /stocks', '/stocks');
  await tell('GET /stocks/:stock/calibration.pdf', '/stocks/roll-2x1/calibration.pdf');
  await tell('GET /printers', '/printers');
  const print = { job: 'boot-room', kind: 'sheet', printer: 'no printer of this name' };
  const { id } = await tell('POST /prints', '/prints', print);
  await tell('GET /prints/:id', `/prints/${String(id)}`);
  await tell('DELETE /prints/:id', `/prints/${String(id)}`);
  await tell('GET /parts/:code', `/parts/${code}?station=router-table`);
  await tell('GET /board', '/board');
  const shows = { station: 'bench', by: 'P-17', code, stage: 'lag', unsent: 1, clock: 40 };
  await tell('PUT /screens', '/screens', { screen: randomUUID(), ...shows });
  expect(await tell('GET /stations', '/stations')).toMatchObject({ stations: [{ door: 'LOCKER-1' }] });
  const { revision, ...shop } = await tell('GET /shop', '/shop');
  await tell('PUT /shop', '/shop', { revision, shop });
  await tell('GET /session', '/session');
  await tell('POST /session', '/session', { pin: '1234' });
  await tell('DELETE /session', '/session');
  await tell('PUT /pin', '/pin', { pin: null });
  await tell('GET /health', '/health');
  await tell('POST /troubles/known', '/troubles/known', {});
  const backup = await tell('POST /backups', '/backups', {});
  await tell('GET /backups', '/backups');
  await tell('POST /backups/:name/restore', `/backups/${String(backup.name)}/restore`, {});
  const everything = await tell('GET /export', '/export');
  await tell('POST /import', '/import', archiveText(everything));
  await tell('DELETE /jobs/:id', '/jobs/boot-room');
  await tell('GET /bin', '/bin');
  await tell('POST /bin/:id/restore', '/bin/boot-room/restore', {});
  await tell('DELETE /jobs/:id', '/jobs/boot-room');
  await tell('DELETE /bin/:id', '/bin/boot-room');
  const stick = freshFolder();
  await tell('PUT /backups/elsewhere', '/backups/elsewhere', { folder: stick });
  const there = await tell('GET /backups/elsewhere', '/backups/elsewhere');
  const [copied] = there.backups as { name: string }[];
  await tell(
    'POST /backups/elsewhere/:name/restore',
    `/backups/elsewhere/${String(copied?.name)}/restore`,
    {},
  );
  await tell('GET /openapi.json', '/openapi.json');
  await tell('GET /network', '/network');
  await tell('PUT /network', '/network', { on: false });
  await tell('GET /pairing', '/pairing');
  const left = Object.keys(ENDPOINTS).filter((key) => !told.has(key));
  // An endless stream, what only a shell answers, and what needs the network: each has tests of its own.
  expect(left).toEqual([
    'GET /events',
    'POST /pairing',
    'GET /moved',
    'POST /moved/token',
    'POST /moved/proof',
    'POST /moved/leave',
    'POST /moved/arrive',
    'POST /network/offers',
    'DELETE /network/devices/:id',
    'POST /kiosk/leave',
    'GET /export/with-network-keys',
  ]);
});

/** An archive's items, a line each, as it was before it was read as one list. */
function archiveText(items: unknown): string {
  return `[\n${(items as unknown[]).map((item) => JSON.stringify(item)).join(',\n')}\n]\n`;
}

type JsonSchema = Parameters<typeof z.fromJSONSchema>[0];

function closed<T>(schema: T): JsonSchema & T {
  if (Array.isArray(schema)) return schema.map((each: unknown) => closed(each)) as never;
  if (typeof schema !== 'object' || schema === null) return schema as never;
  const inside = Object.fromEntries(
    Object.entries(schema).map(([key, value]) => [key, closed(value as unknown)]),
  );
  return ('properties' in schema ? { ...inside, additionalProperties: false } : inside) as never;
}
