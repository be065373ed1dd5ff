import { randomUUID } from 'node:crypto';
import { connect } from 'node:http2';
import { expect, onTestFinished, test } from 'vitest';
import { stationsAnswer } from '#core/api/stations-api.ts';
import { networkHub, type NetworkHub } from '../network/over-network.ts';
import { SMALL_JOB } from '../store/small-shop.ts';

const seenAt = async (live: NetworkHub) =>
  stationsAnswer.parse((await live.ask('GET', '/stations')).body).stations;

/** A page of a device: it says what it shows, and hears the hub's events until it is closed. */
async function pageOf(live: NetworkHub, cookie: string) {
  const screen = randomUUID();
  const session = connect(live.url, { ca: live.authority });
  onTestFinished(() => session.destroy());
  const stream = session.request({ ':path': `/api/events?screen=${screen}`, cookie });
  let heard = '';
  stream.on('data', (piece: Buffer) => (heard += piece.toString()));
  await new Promise((begun) => stream.once('data', begun));
  return {
    heard: () => heard,
    say: (shows: object) =>
      live.over('PUT', '/api/screens', { headers: { cookie }, body: { screen, ...shows } }),
    close: () => session.destroy(),
  };
}

test('a device says what it shows; the board tells who is where with which part, and since when it is away', async () => {
  const live = await networkHub();
  const saved = await live.ask('POST', '/jobs', SMALL_JOB, await live.office());
  const [part] = saved.body.parts as { code: string; door: string; part: string }[];
  const { cookie } = await live.pair('Tablet');
  expect(await seenAt(live)).toMatchObject([{ station: 'table-saw', device: 'Tablet', here: false }]);
  const page = await pageOf(live, cookie);
  const began = Date.now();
  const said = await page.say({
    station: 'milling',
    by: 'P-ANNA',
    code: part?.code,
    stage: 'mill',
    unsent: 2,
    clock: 300_000,
  });
  expect(said.status).toBe(200);
  expect(said.body.trust).toBe(live.hub.network.addresses[0]?.trust);
  expect(Number(said.body.now)).toBeGreaterThanOrEqual(began);
  expect(Number(said.body.now)).toBeLessThanOrEqual(Date.now());
  const [here, ...others] = await seenAt(live);
  expect(others).toEqual([]);
  expect(here).toMatchObject({
    station: 'milling',
    device: 'Tablet',
    here: true,
    by: 'P-ANNA',
    job: SMALL_JOB.job,
    door: part?.door,
    part: part?.part,
    stage: 'mill',
    unsent: 2,
    clock: 300_000,
  });
  await expect.poll(page.heard).toContain('event: stations\n');
  const office = await live.ask('GET', '/network', undefined, await live.office());
  expect(office.body.devices).toMatchObject([{ online: true, clock: 300_000 }]);

  page.close();
  await expect.poll(async () => (await seenAt(live))[0]?.here).toBe(false);
  const [away] = await seenAt(live);
  expect(away).toMatchObject({ station: 'milling', device: 'Tablet', unsent: 2, clock: 300_000 });
  expect(away?.code).toBeUndefined();
  expect(Date.parse(away?.since ?? '')).toBeGreaterThanOrEqual(began);
});

test('a device that is revoked is told of no more; without the network no device is, and the hub’s own machine has no name', async () => {
  const live = await networkHub();
  const { cookie, id } = await live.pair('lost tablet');
  await live.pair('Tablet');
  await (await pageOf(live, cookie)).say({ station: 'milling' });
  const own = { screen: randomUUID(), station: 'bench', code: 'NOSUCHCODE', stage: 'bead' };
  const said = await live.ask('PUT', '/screens', own);
  expect(said.body.trust).toBe(null);
  expect((await seenAt(live)).map(({ device }) => device)).toEqual(['lost tablet', 'Tablet', null]);
  await live.ask('DELETE', `/network/devices/${id}`, undefined, await live.office());
  const [silent, here] = await seenAt(live);
  expect(silent).toMatchObject({ device: 'Tablet', here: false });
  expect(here).toMatchObject({ station: 'bench', device: null, here: true, code: 'NOSUCHCODE' });
  expect(here).not.toHaveProperty('door');
  await live.ask('PUT', '/network', { on: false }, await live.office());
  expect((await seenAt(live)).map(({ device }) => device)).toEqual([null]);
});

test('what a page says keeps to its limits', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('Tablet');
  const good = { screen: randomUUID(), station: 'bench' };
  for (const wrong of [
    { screen: 'mine' },
    { station: 'moon' },
    { station: undefined },
    { by: 'x'.repeat(61) },
    { by: 'a\nb' },
    { code: 'x'.repeat(41) },
    { stage: 'Not A Stage' },
    { unsent: -1 },
    { unsent: 1.5 },
    { clock: 1e14 },
    { clock: 'now' },
    { name: 'Boss' },
  ]) {
    const said = await live.over('PUT', '/api/screens', { headers: { cookie }, body: { ...good, ...wrong } });
    expect([said.status, said.body.code], JSON.stringify(wrong)).toEqual([400, 'malformed']);
  }
  const long = await live.over('GET', `/api/events?screen=${'x'.repeat(201)}`, { headers: { cookie } });
  expect(long.status).toBe(400);
  expect(await seenAt(live)).toMatchObject([{ here: false }]);
});
