import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type LiveHub, liveHub } from './live-hub.ts';

const cookiesIn = (headers: Headers) =>
  headers
    .getSetCookie()
    .map((each) => each.split(';')[0])
    .join('; ');

async function withPin({ ask }: LiveHub): Promise<string> {
  return cookiesIn((await ask('PUT', '/pin', { pin: '2468' })).headers);
}
const open = async ({ ask }: LiveHub, cookie: string) =>
  (await ask('GET', '/session', undefined, { cookie })).body.open;

test('a session outlives a restart, kept as a hash alone, and ends for good when it is ended', async () => {
  const live = await liveHub();
  const cookie = await withPin(live);
  await live.restart();
  expect(await open(live, cookie)).toBe(true);
  const token = /shoulderline=([^;]*)/.exec(cookie)?.[1] ?? '';
  expect(token).toHaveLength(43);
  expect(readFileSync(join(live.data, 'sessions.json'), 'utf8')).not.toContain(token);
  await live.ask('DELETE', '/session', undefined, { cookie });
  await live.restart();
  expect(await open(live, cookie)).toBe(false);
});

test('with pin.json removed and another PIN set, or with the PIN changed, no session of before is open', async () => {
  const live = await liveHub();
  const cookie = await withPin(live);
  await live.hub.stop();
  rmSync(join(live.data, 'pin.json'));
  await live.start();
  const other = cookiesIn((await live.ask('PUT', '/pin', { pin: '13579' })).headers);
  await live.restart();
  expect([await open(live, cookie), await open(live, other)]).toEqual([false, true]);
  await live.ask('PUT', '/pin', { pin: '2468' }, { cookie: other });
  await live.restart();
  expect([await open(live, cookie), await open(live, other)]).toEqual([false, false]);
  const now = cookiesIn((await live.ask('POST', '/session', { pin: '2468' })).headers);
  await live.ask('PUT', '/pin', { pin: null }, { cookie: now });
  expect(readdirSync(live.data)).not.toContain('sessions.json');
});

test('a browser is told apart by a cookie of its own, and one that gave the PIN is not held up by others’ tries', async () => {
  const live = await liveHub();
  await withPin(live);
  const met = await live.ask('GET', '/session');
  expect(met.headers.getSetCookie()).toEqual([
    expect.stringMatching(
      /^shoulderline-browser=[\w-]{43}; Path=\/api; HttpOnly; SameSite=Strict; Max-Age=31536000$/,
    ),
  ]);
  const office = cookiesIn(met.headers);
  expect((await live.ask('POST', '/session', { pin: '2468' }, { cookie: office })).status).toBe(200);
  for (let k = 0; k < 3; k += 1) await live.ask('POST', '/session', { pin: '0000' });
  expect((await live.ask('POST', '/session', { pin: '2468' })).body.code).toBe('pin-wait');
  await live.restart();
  expect((await live.ask('POST', '/session', { pin: '2468' }, { cookie: office })).status).toBe(200);
  expect((await live.ask('POST', '/session', { pin: '2468' })).body.code).toBe('pin-wait');
});
