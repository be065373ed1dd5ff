import { randomBytes } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import { connect } from 'node:http2';
import { request } from 'node:https';
import { expect, onTestFinished, test } from 'vitest';
import { networkHub, type NetworkHub } from './over-network.ts';

const MINUTE_MS = 60_000;
const WRONG = [401, 'pairing-wrong'];

/** What the hub says to whoever brings this, over either protocol. */
async function bring(live: NetworkHub, secret: string, by: 'over' | 'overTwo') {
  const body = { secret, name: 'tablet', station: 'bench', ...(await live.proof()) };
  const answer = await live[by]('POST', '/api/pairing', { body });
  return [answer.status, answer.body.code];
}

/** What stands in the scanned address, which the office is shown as a symbol only. */
const tokenOf = (live: NetworkHub) => live.hub.network.offers.begin();

test.each(['over', 'overTwo'] as const)(
  'a token that was used, is over, was guessed or was taken back is answered 401 (%s)',
  async (by) => {
    let now = Date.now();
    const live = await networkHub({ now: () => now });
    const used = tokenOf(live);
    expect(await bring(live, used.token, by)).toEqual([201, undefined]);
    expect(await bring(live, used.token, by)).toEqual(WRONG);
    expect(await bring(live, used.code, by)).toEqual(WRONG);

    const late = tokenOf(live);
    now += 10 * MINUTE_MS + 1;
    expect(await bring(live, late.token, by)).toEqual(WRONG);
    expect(await bring(live, late.code, by)).toEqual(WRONG);
    const inTime = tokenOf(live);
    now += 10 * MINUTE_MS;
    expect(await bring(live, randomBytes(16).toString('base64url'), by)).toEqual(WRONG);
    expect(await bring(live, inTime.token, by)).toEqual([201, undefined]);

    const earlier = tokenOf(live);
    tokenOf(live);
    expect(await bring(live, earlier.token, by)).toEqual(WRONG);
    const ended = tokenOf(live);
    live.hub.network.offers.end();
    expect(await bring(live, ended.token, by)).toEqual(WRONG);
    expect(live.hub.network.devices.all).toHaveLength(2);
  },
);

test('the streams of a revoked device end at once, over HTTP/1.1 and HTTP/2, and those of others go on', async () => {
  const live = await networkHub();
  const lost = await live.pair('lost tablet');
  const other = await live.pair('tablet');
  const streams = {
    one: await streamByOne(live, lost.cookie),
    two: await streamByTwo(live, lost.cookie),
    otherOne: await streamByOne(live, other.cookie),
    otherTwo: await streamByTwo(live, other.cookie),
  };
  const office = await live.office();
  const revoked = Date.now();
  await live.ask('DELETE', `/network/devices/${lost.id}`, undefined, office);
  await Promise.all([streams.one.ended, streams.two.ended]);
  // A beat comes each second: it is not by one that they were found out.
  expect(Date.now() - revoked).toBeLessThan(500);
  expect([streams.otherOne.open(), streams.otherTwo.open()]).toEqual([true, true]);
  for (const by of ['over', 'overTwo'] as const)
    expect((await live[by]('GET', '/api/events', { headers: { cookie: lost.cookie } })).status).toBe(401);
});

/** Notes when it ends, once it has begun. */
function watched(ended: Promise<unknown>) {
  let open = true;
  return { ended: ended.then(() => (open = false)), open: () => open };
}

async function streamByOne(live: NetworkHub, cookie: string) {
  const asked = request(`${live.url}/api/events`, { ca: live.authority, agent: false, headers: { cookie } });
  onTestFinished(() => void asked.destroy());
  asked.end();
  const answer = await new Promise<IncomingMessage>((begun) => asked.once('response', begun));
  await new Promise((begun) => answer.once('data', begun));
  return watched(new Promise((over) => answer.once('end', over)));
}

async function streamByTwo(live: NetworkHub, cookie: string) {
  const session = connect(live.url, { ca: live.authority });
  onTestFinished(() => session.destroy());
  const stream = session.request({ ':path': '/api/events', cookie });
  await new Promise((begun) => stream.once('data', begun));
  stream.resume();
  return watched(new Promise((over) => stream.once('end', over)));
}
