import { type ClientHttp2Session, connect } from 'node:http2';
import { connect as connectSocket } from 'node:net';
import { connect as connectSecure } from 'node:tls';
import { expect, onTestFinished, test } from 'vitest';
import { networkHub, type NetworkHub } from './over-network.ts';

/** A connection by HTTP/2 of a machine of its own. */
function machine(live: NetworkHub, localAddress: string): ClientHttp2Session {
  const { hostname, port } = new URL(live.url);
  const session = connect(live.url, {
    createConnection: () =>
      connectSecure({
        host: hostname,
        socket: connectSocket({ host: hostname, port: Number(port), localAddress }),
        ca: live.authority,
        ALPNProtocols: ['h2'],
      }),
  });
  session.on('error', () => undefined);
  onTestFinished(() => session.destroy());
  return session;
}

/** What each of so many requests at once is answered; 0 where it is not. */
function asks(session: ClientHttp2Session, many: number, headers: Record<string, string>): Promise<number[]> {
  const one = () =>
    new Promise<number>((told) => {
      const asked = session.request(headers);
      let status = 0;
      asked.on('response', (answer) => (status = answer[':status'] ?? 0));
      asked.on('error', () => undefined);
      asked.on('close', () => told(status));
      asked.resume();
    });
  return Promise.all(Array.from({ length: many }, one));
}

test('a stranger who asks without end is shut out, while a device on another machine may ask as much as it likes', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('tablet');
  const [stranger, device] = [machine(live, '127.0.2.1'), machine(live, '127.0.2.2')];
  const [strange, known] = await Promise.all([
    asks(stranger, 300, { ':path': '/api/pairing' }),
    asks(device, 1, { ':path': '/api/shop', cookie }).then(() =>
      asks(device, 300, { ':path': '/api/shop', cookie }),
    ),
  ]);
  expect(strange.filter((status) => status === 200).length).toBeLessThan(200);
  expect(strange).toContain(0);
  expect(new Set(known)).toEqual(new Set([200]));
  expect(stranger.destroyed).toBe(true);
  expect(await asks(machine(live, '127.0.2.1'), 1, { ':path': '/api/pairing' })).toEqual([0]);
});

test('a device has so many streams, and loses its oldest', async () => {
  const live = await networkHub();
  const { cookie } = await live.pair('tablet');
  const session = machine(live, '127.0.2.1');
  const streams = Array.from({ length: 26 }, () => session.request({ ':path': '/api/events', cookie }));
  streams.forEach((stream) => stream.on('error', () => undefined).resume());
  await expect.poll(() => streams.filter(({ destroyed }) => !destroyed)).toHaveLength(24);
  expect(streams.slice(0, 2).every(({ destroyed }) => destroyed)).toBe(true);
});

test('a device that opens streams without end is told to wait, and another one is not', async () => {
  const live = await networkHub();
  const [one, other] = [await live.pair('tablet'), await live.pair('telephone')];
  const session = machine(live, '127.0.2.1');
  const answered = await Promise.all(
    Array.from({ length: 60 }, () => {
      const stream = session.request({ ':path': '/api/events', cookie: one.cookie });
      stream.on('error', () => undefined).resume();
      return new Promise<number>((told) => stream.on('response', (answer) => told(answer[':status'] ?? 0)));
    }),
  );
  expect(answered.slice(0, 48).every((status) => status === 200)).toBe(true);
  expect(answered.slice(55).every((status) => status === 429)).toBe(true);
  const its = machine(live, '127.0.2.1').request({ ':path': '/api/events', cookie: other.cookie });
  expect(await new Promise((told) => its.on('response', (answer) => told(answer[':status'])))).toBe(200);
});
