import { connect } from 'node:http2';
import { expect, onTestFinished, test } from 'vitest';
import { type Endpoint, type EndpointKey, ENDPOINTS } from '#core/api/endpoints.ts';
import { MOST_DEVICES } from '#main/network/device-store.ts';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { networkHub, type NetworkHub, PIN } from './over-network.ts';

const KEYS = Object.keys(ENDPOINTS) as EndpointKey[];

/** Something that an endpoint takes, or refuses for what it is, but never for who asks. */
function asked(key: EndpointKey): {
  readonly method: string;
  readonly path: string;
  readonly body?: unknown;
} {
  const [method = '', path = ''] = key.split(' ');
  const endpoint: Endpoint = ENDPOINTS[key];
  return {
    method,
    path: `/api${path.replace(/:\w+/g, 'none')}`,
    ...(endpoint.takes === undefined ? {} : { body: { none: true } }),
  };
}

/** What each endpoint answers to whoever shows these headers. */
async function walk(
  live: NetworkHub,
  headers: Record<string, string>,
  keys: readonly EndpointKey[] = KEYS,
): Promise<Map<EndpointKey, { readonly status: number; readonly code: unknown }>> {
  const told = new Map<EndpointKey, { readonly status: number; readonly code: unknown }>();
  for (const key of keys) {
    const { method, path, body } = asked(key);
    const { status, body: answer } = await live.over(method, path, {
      headers,
      ...(body === undefined ? {} : { body }),
    });
    told.set(key, { status, code: answer.code });
  }
  return told;
}

/** A stream never ends by itself: it is asked for in tests of its own. */
const ENDING = KEYS.filter((key) => key !== 'GET /events');

test('who was not paired gets nothing over the network but the addresses to be paired, and to arrive from another address, by', async () => {
  const live = await networkHub();
  const told = await walk(live, {});
  for (const [key, { status, code }] of told) {
    if ((ENDPOINTS[key] as Endpoint).who === 'anyone') expect(status, key).not.toBe(401);
    else expect({ status, code }, key).toEqual({ status: 401, code: 'not-paired' });
  }
  const open = KEYS.filter((key) => (ENDPOINTS[key] as Endpoint).who === 'anyone');
  expect(open).toEqual(['GET /pairing', 'POST /pairing', 'POST /moved/proof', 'POST /moved/arrive']);
  for (const path of [
    '/api/none',
    '/none',
    '/api/jobs/../health',
    '/service-worker.js',
    '/screens.json',
    '//',
  ]) {
    const { status, body } = await live.over('GET', path);
    expect({ path, status, code: body.code }).toEqual({ path, status: 401, code: 'not-paired' });
  }
  for (const method of ['HEAD', 'OPTIONS', 'PATCH', 'TRACE'])
    expect((await live.over(method, '/api/jobs')).status, method).toBe(401);
  const page = await live.over('GET', '/station/table-saw', { headers: { accept: 'text/html' } });
  expect([page.status, page.headers.location]).toEqual([303, '/pairing']);
});

test('a paired device may do what stations do, and nothing that the office does without the PIN', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('tablet');
  const told = await walk(live, { cookie }, ENDING);
  for (const [key, { status, code }] of told) {
    const { who, here }: Endpoint = ENDPOINTS[key];
    if (here === true) expect([status, code], key).toEqual([403, 'only-here']);
    else if (who === 'office') expect([status, code], key).toEqual([401, 'pin-needed']);
    else
      expect(code === 'pin-needed' || code === 'not-paired' || status === 403, key).toBe(
        key === 'POST /pairing' && status === 403,
      );
  }
});

test('a paired device at which the PIN was given is the office, but not the hub’s own machine', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('tablet');
  const given = await live.over('POST', '/api/session', { headers: { cookie }, body: { pin: PIN } });
  expect(String(given.headers['set-cookie'])).toMatch(/^shoulderline=[\w-]{43}; .*; Secure$/);
  const both = `${cookie}; ${String(given.headers['set-cookie']).replace(/;.*/, '')}`;
  const changing: EndpointKey[] = ['DELETE /session', 'POST /backups', 'POST /pairing'];
  const told = await walk(
    live,
    { cookie: both },
    ENDING.filter((key) => !changing.includes(key)),
  );
  for (const [key, { status, code }] of told)
    if ((ENDPOINTS[key] as Endpoint).here === true) expect([status, code], key).toEqual([403, 'only-here']);
    else expect([401, 403].includes(status), `${key} ${status} ${String(code)}`).toBe(false);
  // What the office was given is worth nothing to who is not paired.
  const alone = await live.over('GET', '/api/backups', { headers: { cookie: both.replace(cookie, '') } });
  expect([alone.status, alone.body.code]).toEqual([401, 'not-paired']);
});

test('a revoked device is told from one that never was by nothing, and its stream ends at once', async () => {
  const live = await networkHub();
  const { cookie, id } = await live.pair('lost tablet');
  const other = await live.pair('tablet');
  const streams = await Promise.all([cookie, other.cookie].map((each) => streamOf(live, each)));
  const revoked = await live.ask('DELETE', `/network/devices/${id}`, undefined, await live.office());
  expect(revoked.body.devices).toMatchObject([{ name: 'tablet' }]);
  await streams[0]?.ended;
  expect(streams[1]?.open()).toBe(true);
  const told = await walk(live, { cookie });
  for (const [key, { status, code }] of told)
    if ((ENDPOINTS[key] as Endpoint).who !== 'anyone')
      expect({ status, code }, key).toEqual({ status: 401, code: 'not-paired' });
  await live.restart();
  expect((await live.over('GET', '/api/jobs', { headers: { cookie } })).status).toBe(401);
  expect((await live.over('GET', '/api/jobs', { headers: { cookie: other.cookie } })).status).toBe(200);
  const again = await live.ask('DELETE', `/network/devices/${id}`, undefined, await live.office());
  expect([again.status, again.body.code]).toEqual([404, 'device-unknown']);
});

/** The stream of events of whoever shows this cookie, over HTTP/2. */
async function streamOf(live: NetworkHub, cookie: string) {
  const session = connect(live.url, { ca: live.authority });
  onTestFinished(() => session.destroy());
  const stream = session.request({ ':path': '/api/events', cookie });
  await new Promise((begun) => stream.once('data', begun));
  stream.on('data', () => undefined);
  let open = true;
  const ended = new Promise<void>((over) =>
    stream.once('close', () => {
      open = false;
      over();
    }),
  );
  return { ended, open: () => open, stream, session };
}

test('a code is good once, for ten minutes, and for ten tries; a token once; and none without a page that the browser trusts', async () => {
  const live = await networkHub();
  const pair = async (secret: string, proof?: { ask: string; proof: string }) => {
    const body = { secret, name: 'tablet', station: 'bench', ...(proof ?? (await live.proof())) };
    const answer = await live.over('POST', '/api/pairing', { body });
    return [answer.status, answer.body.code];
  };
  const { code } = await live.offer();
  const good = await live.proof();
  expect(await pair(code, { ...good, proof: good.proof.replace(/./, '!') })).toEqual([
    403,
    'pairing-unproved',
  ]);
  expect(await pair(code, { ask: `${Date.now()}.AAAAAAAAAAAAAAAA`, proof: good.proof })).toEqual([
    403,
    'pairing-unproved',
  ]);
  const page = await live.over('GET', `/pairing/worker.js?ask=${good.ask}`);
  expect(page.status).toBe(404);
  expect(await pair(`${code.slice(0, 4)}-${code.slice(4).toLowerCase()}`)).toEqual([201, undefined]);
  expect(await pair(code)).toEqual([401, 'pairing-wrong']);

  const guessed = await live.offer();
  const wrong = guessed.code.replace(/^./, (first) => (first === 'A' ? 'B' : 'A'));
  for (let k = 0; k < 10; k += 1) expect(await pair(wrong)).toEqual([401, 'pairing-wrong']);
  expect(await pair(guessed.code)).toEqual([401, 'pairing-wrong']);

  const first = await live.offer();
  await live.offer();
  expect(await pair(first.code)).toEqual([401, 'pairing-wrong']);
  expect(live.hub.network.devices.all).toHaveLength(1);
});

test('nobody is paired with a network that is full, and the offer is left for later', async () => {
  const live = await networkHub();
  while (live.hub.network.devices.all.length < MOST_DEVICES)
    await live.hub.network.devices.add('tablet', 'bench');
  const { code } = await live.offer();
  const body = { secret: code, name: 'one more', station: 'bench', ...(await live.proof()) };
  expect((await live.over('POST', '/api/pairing', { body })).body.code).toBe('devices-full');
  const [oldest] = live.hub.network.devices.all;
  await live.ask('DELETE', `/network/devices/${String(oldest?.id)}`, undefined, await live.office());
  expect((await live.over('POST', '/api/pairing', { body })).status).toBe(201);
});

test('marks made at the hub reach the stream of a device, with those that it missed first; switching off ends it', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('tablet');
  const office = await live.office();
  const saved = await live.ask('POST', '/jobs', SMALL_JOB, office);
  const [first = '', second = ''] = (saved.body.parts as { code: string }[]).map(({ code }) => code);
  await live.ask('POST', '/marks', milled(first));
  const { stream, session, ended } = await streamOf(live, cookie);
  const later = session.request({ ':path': '/api/events', cookie, 'last-event-id': '0' });
  const heard = { stream: '', later: '' };
  stream.on('data', (piece: Buffer) => (heard.stream += piece.toString()));
  later.on('data', (piece: Buffer) => (heard.later += piece.toString()));
  await expect.poll(() => heard.later).toContain(first);
  await live.ask('POST', '/marks', milled(second));
  await expect.poll(() => heard.stream.includes(second) && heard.later.includes(second)).toBe(true);
  expect(heard.stream).not.toContain(first);
  await live.ask('PUT', '/network', { on: false }, office);
  await ended;
});

test('the office on a device may switch the network off, and is answered before it goes', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('tablet');
  const given = await live.overTwo('POST', '/api/session', { headers: { cookie }, body: { pin: PIN } });
  const [session = ''] = [given.headers['set-cookie']].flat();
  const both = `${cookie}; ${session.replace(/;.*/, '')}`;
  const off = await live.overTwo('PUT', '/api/network', { headers: { cookie: both }, body: { on: false } });
  expect(off.status).toBe(200);
  await expect.poll(() => live.hub.network.addresses).toEqual([]);
});
