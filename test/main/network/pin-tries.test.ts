import { randomBytes } from 'node:crypto';
import { expect, test } from 'vitest';
import { liveHub } from '../hub/live-hub.ts';
import { networkHub, PIN } from './over-network.ts';

const cookiesIn = (headers: Headers) =>
  headers
    .getSetCookie()
    .map((each) => each.replace(/;.*/, ''))
    .join('; ');

/** Another one each time. */
const anyBrowser = () => `shoulderline-browser=${randomBytes(32).toString('base64url')}`;

/** How many wrong tries are taken until one has to wait. */
async function triesUntilWait(wrong: () => Promise<number>): Promise<number> {
  for (let k = 0; k < 20; k += 1) if ((await wrong()) === 429) return k;
  throw new Error('nobody has to wait');
}

test('a tablet that tries PIN after PIN, each as another browser, waits after three', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('hostile');
  const tries = await triesUntilWait(async () => {
    const headers = { cookie: `${cookie}; ${anyBrowser()}` };
    return (await live.over('POST', '/api/session', { body: { pin: '0000' }, headers })).status;
  });
  expect(tries).toBe(3);
  const other = await live.pair('honest');
  const said = { body: { pin: PIN }, headers: { cookie: other.cookie } };
  expect((await live.over('POST', '/api/session', said)).status).toBe(200);
});

test('the browser that sets the PIN has given it: it is not held up by what others try', async () => {
  const live = await liveHub();
  const cookie = cookiesIn((await live.ask('PUT', '/pin', { pin: PIN })).headers);
  const tries = await triesUntilWait(
    async () => (await live.ask('POST', '/session', { pin: '0000' }, { cookie: anyBrowser() })).status,
  );
  expect(tries).toBe(12);
  expect((await live.ask('POST', '/session', { pin: PIN }, { cookie })).status).toBe(200);
});
