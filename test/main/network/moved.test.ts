import { createHash, createHmac, randomBytes } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Endpoint, type EndpointKey, ENDPOINTS } from '#core/api/endpoints.ts';
import { HandOvers } from '#main/network/hand-overs.ts';
import { milled, SMALL_JOB } from '../store/small-shop.ts';
import { networkHub, type NetworkHub, PIN, TOLD } from './over-network.ts';

/** A device whose page was got at the hub's first address and has a token to send by. */
async function devicePage(live: NetworkHub, name = 'tablet') {
  const { cookie, id } = await live.pair(name);
  const given = await live.over('POST', '/api/moved/token', { headers: { cookie }, body: {} });
  expect([given.status, given.body.device]).toEqual([201, id]);
  const token = String(given.body.token);
  return {
    cookie,
    id,
    token,
    origin: live.url,
    headers: { origin: live.url, authorization: `Bearer ${token}` },
  };
}

/** The hub goes on at another address, as after a change in the shop's network. */
async function move(live: NetworkHub, host = '127.0.0.3'): Promise<void> {
  await live.hub.stop();
  await live.start({ network: { ...TOLD, hosts: [host] } });
  expect(new URL(live.url).hostname).toBe(host);
}

async function codesOf(live: NetworkHub): Promise<string[]> {
  const saved = await live.ask('POST', '/jobs', SMALL_JOB, await live.office());
  return (saved.body.parts as { code: string }[]).map(({ code }) => code);
}

/** What a page reckons that the hub which knows its token answers. */
function provedBy(token: string, nonce: string, at: string): string {
  const key = createHash('sha256').update(token).digest();
  return createHmac('sha256', key).update(`${nonce} ${at}`).digest('base64url');
}

test('ten marks that a page kept come to the hub at its new address by the token, once each and in order, whatever answers were lost', async () => {
  const live = await networkHub();
  const page = await devicePage(live);
  const codes = (await codesOf(live)).slice(0, 10);
  const marks = codes.map((code) => milled(code));
  expect(marks).toHaveLength(10);
  await move(live);
  const send = (body: unknown) => live.over('POST', '/api/marks', { headers: page.headers, body });
  for (const [k, mark] of marks.entries()) {
    const answer = await send(mark);
    expect([answer.status, answer.headers['access-control-allow-origin']]).toEqual([200, page.origin]);
    // Its answer was lost on the way, so the page sends it again.
    if (k % 3 === 0) expect((await send(mark)).body).toEqual(answer.body);
  }
  const seen: string[] = [];
  for await (const { mark } of live.hub.store.since(0)) seen.push(mark.id);
  expect(seen).toEqual(marks.map(({ id }) => id));
});

test('a page from another address may send marks, ask for a proof and leave for here: every other address refuses it, token, cookie and all', async () => {
  const live = await networkHub();
  const page = await devicePage(live);
  await move(live);
  const keys = Object.keys(ENDPOINTS) as EndpointKey[];
  const given = await live.over('POST', '/api/session', {
    headers: { cookie: page.cookie },
    body: { pin: PIN },
  });
  const cookie = `${page.cookie}; ${String(given.headers['set-cookie']).replace(/;.*/, '')}`;
  expect((await live.over('GET', '/api/backups', { headers: { cookie } })).status).toBe(200);
  const walk = async (key: EndpointKey, headers: Record<string, string>) => {
    const [method = '', path = ''] = key.split(' ');
    const {
      status,
      body,
      headers: told,
    } = await live.over(method, `/api${path.replace(/:\w+/g, 'none')}`, {
      headers,
      ...('takes' in ENDPOINTS[key] ? { body: { none: true } } : {}),
    });
    return [status, body.code, told['access-control-allow-origin']];
  };
  const foreign = [
    'https://elsewhere.example',
    'null',
    page.origin.replace('https', 'http'),
    `${page.origin}0`,
    page.origin.replace('127.0.0.2', '127.0.0.4'),
  ];
  const open = keys.filter((key) => (ENDPOINTS[key] as Endpoint).elsewhere === true);
  for (const key of keys) {
    const all = { ...page.headers, cookie, 'sec-fetch-site': 'cross-site' };
    for (const origin of open.includes(key) ? foreign : [page.origin])
      expect(await walk(key, { ...all, origin }), `${key} ${origin}`).toEqual([403, 'origin', undefined]);
  }
  expect(open).toEqual(['POST /marks', 'POST /moved/proof', 'POST /moved/leave']);
  expect(await walk('POST /marks', page.headers)).toEqual([400, 'malformed', page.origin]);
  // A cookie that came along, or a token of somebody else, lets nobody in.
  const { origin } = page;
  for (const headers of [
    { origin, cookie },
    { origin, cookie, authorization: `Bearer ${randomBytes(32).toString('base64url')}` },
    { origin, authorization: page.token },
  ])
    for (const key of ['POST /marks', 'POST /moved/leave'] as const)
      expect(await walk(key, headers), key).toEqual([401, 'not-paired', origin]);
  // Nor does the token where the page itself was got.
  const here = { authorization: page.headers.authorization };
  expect(await walk('POST /marks', here)).toEqual([401, 'not-paired', undefined]);
  expect(await walk('POST /marks', { ...here, origin: live.url })).toEqual([401, 'not-paired', undefined]);
  expect(await walk('POST /marks', { ...page.headers, host: 'elsewhere.example' })).toEqual([
    421,
    'host',
    undefined,
  ]);
});

test('a browser that asks first is told what a page from another address may do, and nothing of what it may not', async () => {
  const live = await networkHub();
  const { origin } = await devicePage(live);
  await move(live);
  const preflight = async (path: string, more: Record<string, string> = {}) =>
    live.over('OPTIONS', path, { headers: { origin, 'sec-fetch-site': 'cross-site', ...more } });
  const { status, headers } = await preflight('/api/marks');
  expect(status).toBe(204);
  expect(headers).toMatchObject({
    'access-control-allow-origin': origin,
    'access-control-allow-methods': 'POST',
    'access-control-allow-headers': 'authorization, content-type, accept-language',
    vary: 'Origin',
  });
  expect(headers['access-control-allow-credentials']).toBeUndefined();
  expect(headers['access-control-allow-private-network']).toBeUndefined();
  const near = await preflight('/api/marks', { 'access-control-request-private-network': 'true' });
  expect(near.headers['access-control-allow-private-network']).toBe('true');
  for (const path of ['/api/jobs', '/api/session', '/api/moved/arrive', '/api/none', '/', '/api/events']) {
    const refused = await preflight(path);
    expect([refused.status, refused.headers['access-control-allow-origin']], path).toEqual([403, undefined]);
  }
  expect((await preflight('/api/marks', { origin: 'https://elsewhere.example' })).status).toBe(403);
});

test('the hub proves that it knows a page’s token for its own address alone, so that nobody in between can pass the proof on', async () => {
  const live = await networkHub();
  const page = await devicePage(live);
  const other = await devicePage(live, 'another tablet');
  await move(live);
  const nonce = randomBytes(32).toString('base64url');
  const { origin } = page;
  const asked = (body: unknown, headers: Record<string, string> = { origin }) =>
    live.over('POST', '/api/moved/proof', { headers, body });
  const { status, body } = await asked({ device: page.id, nonce });
  expect([status, body.proof]).toEqual([200, provedBy(page.token, nonce, live.url)]);
  expect(body.proof).not.toBe(provedBy(page.token, nonce, 'https://127.0.0.9:7518'));
  expect((await asked({ device: other.id, nonce })).body.proof).toBe(provedBy(other.token, nonce, live.url));
  expect((await asked({ device: 'nobody', nonce })).status).toBe(404);
  expect((await asked({ device: page.id, nonce }, {})).status).toBe(404);
  expect((await asked({ device: page.id, nonce: 'short' })).status).toBe(400);
  // What is kept of the token is no token.
  const kept = readFileSync(join(live.data, 'device-ways.json'), 'utf8');
  expect(kept).not.toContain(page.token);
  expect(statSync(join(live.data, 'device-ways.json')).mode & 0o777).toBe(0o600);
});

test('a device comes to the new address once by what its page was given: the same device, at both addresses', async () => {
  const live = await networkHub();
  const page = await devicePage(live);
  await move(live);
  const leave = async () => {
    const left = await live.over('POST', '/api/moved/leave', { headers: page.headers, body: {} });
    return String(left.body.token);
  };
  const arrive = async (token: string, proof?: { ask: string; proof: string }) => {
    const body = { token, ...(proof ?? (await live.proof())) };
    return live.over('POST', '/api/moved/arrive', { body });
  };
  const token = await leave();
  const unproved = await arrive(token, { ask: (await live.proof()).ask, proof: 'none' });
  expect([unproved.status, unproved.body.code]).toEqual([403, 'pairing-unproved']);
  const arrived = await arrive(token);
  expect([arrived.status, arrived.body]).toEqual([201, { name: 'tablet', station: 'table-saw' }]);
  expect(String(arrived.headers['set-cookie'])).toMatch(
    /^__Host-shoulderline-device=[\w-]{43}; Path=\/; Secure; HttpOnly; SameSite=Strict; Max-Age=\d+$/,
  );
  const cookie = String(arrived.headers['set-cookie']).replace(/;.*/, '');
  expect([(await arrive(token)).status, (await arrive('guessed')).status]).toEqual([401, 401]);
  const reads = async (each: string) =>
    (await live.over('GET', '/api/jobs', { headers: { cookie: each } })).status;
  expect([await reads(cookie), await reads(page.cookie)]).toEqual([200, 200]);
  expect(live.hub.network.devices.all.map(({ id }) => id)).toEqual([page.id]);

  await live.restart();
  expect(await reads(cookie)).toBe(200);
  // Each page has a token of its own, and the newer is good where it was given alone.
  expect((await live.over('GET', '/api/moved', { headers: { cookie } })).body).toEqual({
    addresses: [live.url],
    device: page.id,
    sending: false,
  });
  const stays = await live.over('POST', '/api/moved/leave', { headers: { cookie }, body: {} });
  expect([stays.status, stays.body.code]).toEqual([409, 'moved-here']);
});

test('a revoked device sends nothing, comes nowhere, and is told so at each address where it was', async () => {
  const live = await networkHub();
  const page = await devicePage(live);
  const before = await live.over('GET', '/api/moved', { headers: { cookie: page.cookie } });
  expect(before.body).toEqual({ addresses: [live.url], device: page.id, sending: true });
  await move(live);
  const left = await live.over('POST', '/api/moved/leave', { headers: page.headers, body: {} });
  const token = String(left.body.token);
  await live.ask('DELETE', `/network/devices/${page.id}`, undefined, await live.office());
  const sent = await live.over('POST', '/api/marks', { headers: page.headers, body: milled('none') });
  expect([sent.status, sent.body.code]).toEqual([401, 'not-paired']);
  expect(sent.headers['access-control-allow-origin']).toBe(page.origin);
  const nonce = randomBytes(32).toString('base64url');
  const proof = await live.over('POST', '/api/moved/proof', {
    headers: { origin: page.origin },
    body: { device: page.id, nonce },
  });
  expect([proof.status, proof.body.code]).toEqual([404, 'device-unknown']);
  const arrived = await live.over('POST', '/api/moved/arrive', { body: { token, ...(await live.proof()) } });
  expect([arrived.status, arrived.body.code]).toEqual([401, 'moved-over']);
});

test('a device is let in where it goes for two minutes, by each of what its last eight tabs were given once', () => {
  let now = 1_000_000;
  const under = new HandOvers(() => now);
  const token = under.begin('one');
  now += 120_001;
  expect(under.take(token)).toBeNull();
  const [first, other, ...tabs] = ['one', 'two', ...Array<string>(8).fill('one')].map((device) =>
    under.begin(device),
  );
  now += 120_000;
  expect(under.take(first ?? '')).toBeNull();
  expect([...tabs, other ?? ''].map((each) => under.take(each))).toEqual([...tabs.map(() => 'one'), 'two']);
  expect(under.take(tabs[0] ?? '')).toBeNull();
});

test('pages over the network may send to an address that nobody knows yet; at the hub’s own machine none is told to, and none taken from', async () => {
  const live = await networkHub();
  const { cookie, headers } = await devicePage(live);
  const policy = async (each: Record<string, string>) =>
    String((await live.over('GET', '/api/jobs', { headers: each })).headers['content-security-policy']);
  expect(await policy({ cookie })).toContain("connect-src 'self' https:;");
  expect(await policy({})).toContain("connect-src 'self';");
  const here = await live.ask('GET', '/jobs');
  expect(here.headers.get('content-security-policy')).toContain("connect-src 'self';");
  const answer = await live.ask('POST', '/marks', milled('none'), headers);
  expect([answer.status, answer.body.code]).toEqual([403, 'origin']);
  expect(answer.headers.get('access-control-allow-origin')).toBeNull();
  expect((await live.ask('POST', '/moved/token', {})).status).toBe(409);
  expect((await live.ask('GET', '/moved')).body).toMatchObject({ device: null, sending: false });
});
