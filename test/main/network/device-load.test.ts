import { connect, type ClientHttp2Session } from 'node:http2';
import { expect, onTestFinished, test } from 'vitest';
import { networkHub } from './over-network.ts';

/** Begins a request and says no more; gives the status where it is answered all the same within a while. */
async function begun(session: ClientHttp2Session, path: string, cookie: string): Promise<number | null> {
  const asked = session.request({
    ':method': 'POST',
    ':path': path,
    cookie,
    'content-type': 'application/json',
  });
  asked.on('error', () => undefined);
  asked.write('{');
  const late = new Promise<null>((over) => setTimeout(() => over(null), 500));
  const answered = new Promise<number>((told) =>
    asked.once('response', (headers) => told(headers[':status'] ?? 0)),
  );
  return Promise.race([answered, late]);
}

const count = (statuses: readonly (number | null)[], which: number | null) =>
  statuses.filter((each) => each === which).length;

test('a device has few large bodies under way, whatever connections it makes, and others are none the worse', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('hostile');
  const honest = await live.pair('honest');
  const sessions = [1, 2].map(() => connect(live.url, { ca: live.authority }));
  onTestFinished(() => sessions.forEach((each) => each.destroy()));
  const large = await Promise.all(
    sessions.flatMap((each) => Array.from({ length: 10 }, () => begun(each, '/api/prints', cookie))),
  );
  expect([count(large, null), count(large, 429)]).toEqual([8, 12]);
  const small = await Promise.all(
    sessions.flatMap((each) => Array.from({ length: 80 }, () => begun(each, '/api/marks', cookie))),
  );
  expect([count(small, null), count(small, 429)]).toEqual([120, 40]);
  expect((await live.over('GET', '/api/jobs', { headers: { cookie } })).body.code).toBe('asks-much');
  const { cookie: theirs } = honest;
  expect((await live.over('GET', '/api/jobs', { headers: { cookie: theirs } })).status).toBe(200);
  // What it gave up counts no more.
  sessions.forEach((each) => each.destroy());
  await expect
    .poll(async () => (await live.over('GET', '/api/jobs', { headers: { cookie } })).status)
    .toBe(200);
});
