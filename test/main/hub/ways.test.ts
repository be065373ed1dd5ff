import { randomUUID } from 'node:crypto';
import { expect, test } from 'vitest';
import type { Plan } from '#core/plan/plan.ts';
import { liveHub, type LiveHub } from './live-hub.ts';

const JOB = {
  format: 1,
  id: 'cooperage',
  job: 'Cooperage cupboards',
  units: 'in',
  doors: [{ mark: 'A', quantity: 2, opening: { width: '16', height: '30' } }],
};

async function planOf(hub: LiveHub): Promise<Plan> {
  const { body } = await hub.ask('GET', '/jobs/cooperage');
  return body as unknown as Plan;
}

const stagesOf = (plan: Plan) => plan.doors[0]?.parts[0]?.stages.map(({ stage }) => stage) ?? [];

/** Does the stages of a door's left stile up to one. */
async function workTo(hub: LiveHub, until: string): Promise<string> {
  const stile = (await planOf(hub)).doors[0]?.parts[0];
  if (stile === undefined) throw new Error('no stile');
  for (const { stage, station } of stile.stages) {
    const mark = {
      id: randomUUID(),
      code: stile.code,
      station,
      stage,
      mark: 'done',
      at: '2026-11-30T08:00:00Z',
    };
    expect((await hub.ask('POST', '/marks', mark)).status).toBe(200);
    if (stage === until) break;
  }
  return stile.code;
}

test('a job takes the shop’s ways on the day it is saved, and keeps them when the shop changes its own', async () => {
  const hub = await liveHub();
  await hub.ask('POST', '/jobs', JOB);
  expect(stagesOf(await planOf(hub))).toEqual(
    expect.arrayContaining(['groove', 'notch-bottom', 'notch-top']),
  );
  const { revision, otherProfile: _other, ...shop } = (await hub.ask('GET', '/shop')).body;
  const profile = { ...(shop.profile as object), ways: { strip: 'rip', groove: 'router' } };
  expect((await hub.ask('PUT', '/shop', { revision, shop: { ...shop, profile } })).status).toBe(200);
  await hub.restart();
  expect(stagesOf(await planOf(hub))).not.toContain('strip');
  await hub.ask('POST', '/jobs', { ...JOB, id: 'later', job: 'Later' });
  const later = (await hub.ask('GET', '/jobs/later')).body as unknown as Plan;
  expect(stagesOf(later)).toEqual(expect.arrayContaining(['slot', 'strip']));
  // A running job in other units gets other tools, and its ways stay.
  const file = {
    ...JOB,
    units: 'mm',
    doors: [{ mark: 'A', quantity: 2, opening: { width: '400', height: '760' } }],
  };
  expect((await hub.ask('PUT', '/jobs/cooperage', { revision: 1, file })).status).toBe(200);
  expect(stagesOf(await planOf(hub))).toContain('notch-bottom');
});

test('a change of ways names what is cut in the old one before it is saved; once saved it is no cut to old settings', async () => {
  const hub = await liveHub();
  await hub.ask('POST', '/jobs', { ...JOB, ways: { strip: 'rip' } });
  const code = await workTo(hub, 'strip');
  const change = { revision: 1, file: { ...JOB, ways: { strip: 'notch' } } };
  const tried = await hub.ask('PUT', '/jobs/cooperage?dry=1', change);
  expect(tried.body).toMatchObject({
    cutOtherWay: 1,
    otherWay: [{ door: 'A-1', part: 'stile-left', stage: 'strip' }],
    disagreeing: 0,
  });
  expect((await hub.ask('PUT', '/jobs/cooperage', change)).status).toBe(200);
  const { asMarked } = (await hub.ask('GET', '/jobs/cooperage/file')).body;
  expect(asMarked).toEqual([]);
  const part = await hub.ask('GET', `/parts/${code}?station=bench`);
  expect(part.body).toMatchObject({ here: { stage: 'clean' } });
  const states = part.body.stages as { stage: string; state: string }[];
  expect(states.filter(({ stage }) => stage.startsWith('notch')).map(({ state }) => state)).toEqual([
    'done',
    'done',
  ]);
  const again = {
    id: randomUUID(),
    code,
    station: 'table-saw',
    stage: 'notch-top',
    mark: 'done',
    at: '2026-11-30T09:00:00Z',
  };
  expect(await hub.ask('POST', '/marks', again)).toMatchObject({
    status: 409,
    body: { code: 'already-done' },
  });
});

test('ways and moisture that are none are refused where they stand', async () => {
  const hub = await liveHub();
  const refused = async (more: object) => {
    const { status, body } = await hub.ask('POST', '/jobs', { ...JOB, ...more });
    return [
      status,
      (body.errors as { path: string; code: string }[]).map(({ path, code }) => `${path} ${code}`),
    ];
  };
  expect(await refused({ ways: { strip: 'chop', plane: 'yes' } })).toEqual([
    400,
    ['ways.plane unknown-field', 'ways.strip word'],
  ]);
  expect(await refused({ moisture: { low: 9, high: 6 } })).toEqual([400, ['moisture moisture']]);
  expect(await refused({ moisture: { atBuild: 8, low: 6, high: 12, now: 1 } })).toEqual([
    400,
    ['moisture.now unknown-field'],
  ]);
});
