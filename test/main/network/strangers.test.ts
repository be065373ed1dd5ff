import { once } from 'node:events';
import { createSecureServer } from 'node:http2';
import { connect, type Socket } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { connect as connectSecure } from 'node:tls';
import { expect, onTestFinished, test } from 'vitest';
import { makeAuthority, makeLeaf } from '#main/network/certificates.ts';
import { STRANGERS, type StrangersLimits } from '#main/network/limits.ts';
import { listenAt } from '#main/network/listening.ts';
import { Pace } from '#main/network/pace.ts';
import { Strangers } from '#main/network/strangers.ts';

const MANY = { most: 1000, perSecond: 1000 };
const LOOSE: StrangersLimits = {
  ...STRANGERS,
  connections: { most: 1000, ofOne: 1000, ofDevice: 1000 },
  made: { all: MANY, ofOne: MANY },
  asked: { all: MANY, ofOne: MANY, little: 0 },
  shutOutMs: 300,
};

/** A port whose connections are handed on as these limits let them; each is told of here. */
async function guarded(limits: Partial<StrangersLimits>, opened = true) {
  const strangers = new Strangers({ ...LOOSE, ...limits });
  const handedOn: Socket[] = [];
  const take = (_event: 'connection', socket: Socket) => {
    socket.resume();
    handedOn.push(socket);
    return true;
  };
  const listening = await listenAt(['127.0.0.1'], 0, { emit: take }, strangers);
  if (opened) listening.open();
  onTestFinished(async () => {
    await listening.close();
    strangers.close();
  });
  const from = (address: string) => {
    const socket = connect({ host: '127.0.0.1', port: listening.port, localAddress: address });
    onTestFinished(() => void socket.destroy());
    socket.on('error', () => undefined);
    const client = { socket, open: true };
    socket.on('close', () => (client.open = false));
    socket.resume();
    return client;
  };
  const many = (address: string, count: number) => Array.from({ length: count }, () => from(address));
  return { strangers, handedOn, from, many, listening };
}

const open = (clients: readonly { readonly open: boolean }[]) => clients.filter((each) => each.open).length;

test('one machine has so many connections, and those of others are not held up by them', async () => {
  const { many, handedOn } = await guarded({ connections: { most: 1000, ofOne: 3, ofDevice: 1 } });
  const hostile = many('127.0.2.1', 10);
  await expect.poll(() => open(hostile)).toBe(3);
  const others = many('127.0.2.2', 3);
  await expect.poll(() => handedOn.length).toBe(6);
  expect(open(others)).toBe(3);
  hostile[0]?.socket.destroy();
  hostile.filter((each) => each.open).forEach(({ socket }) => socket.destroy());
  await expect.poll(() => open(hostile)).toBe(0);
  await pause(20);
  const again = many('127.0.2.1', 3);
  await expect.poll(() => handedOn.length).toBe(9);
  expect(open(again)).toBe(3);
});

test('whoever comes before it is opened waits, and loses nothing of what is said', async () => {
  const { from, handedOn, listening } = await guarded({}, false);
  const early = from('127.0.2.1');
  early.socket.write('early');
  await once(early.socket, 'connect');
  await pause(50);
  expect(handedOn).toEqual([]);
  listening.open();
  await expect.poll(() => handedOn.length).toBe(1);
  const [said] = (await once(handedOn[0] ?? early.socket, 'data')) as [Buffer];
  expect(String(said)).toBe('early');
});

test('where there are too many over all, the machine that has the most loses its oldest', async () => {
  const { from, many } = await guarded({ connections: { most: 5, ofOne: 4, ofDevice: 1 } });
  const one = from('127.0.2.2');
  const hostile = many('127.0.2.1', 4);
  await expect.poll(() => one.open && open(hostile)).toBe(4);
  await pause(50);
  const late = from('127.0.2.3');
  await expect.poll(() => open(hostile)).toBe(3);
  await pause(50);
  expect([one.open, late.open, open(hostile)]).toEqual([true, true, 3]);
});

test('connections that come too quickly wait, each machine’s in turn, and lose nothing of what they say', async () => {
  const made = { all: MANY, ofOne: { most: 2, perSecond: 10 } };
  const { many, handedOn, from } = await guarded({ made });
  many('127.0.2.1', 6);
  await expect.poll(() => handedOn.length).toBe(2);
  await pause(20);
  const other = from('127.0.2.2');
  other.socket.write('here');
  await expect.poll(() => handedOn.length).toBeGreaterThan(2);
  await expect
    .poll(() => handedOn.find(({ remoteAddress }) => remoteAddress === '127.0.2.2')?.bytesRead)
    .toBe(4);
  expect(handedOn.length).toBeLessThan(6);
  await expect.poll(() => handedOn.length).toBe(7);
});

test('a connection lasts so long, unless a device shows itself by it', async () => {
  const { many, handedOn, strangers } = await guarded({ lastMs: 200 });
  const [stranger, device] = many('127.0.2.1', 2);
  await expect.poll(() => handedOn.length).toBe(2);
  const its = handedOn.find(({ remotePort }) => remotePort === device?.socket.localPort);
  strangers.shows(its, 'device');
  await expect.poll(() => stranger?.open).toBe(false);
  await pause(300);
  expect(device?.open).toBe(true);
  strangers.endOf('another');
  strangers.endOf('device');
  await expect.poll(() => device?.open, { timeout: 2000 }).toBe(false);
});

test('who asks too quickly is shut out for a while; a device is not, unless it asks as none', async () => {
  const asked = { all: MANY, ofOne: { most: 3, perSecond: 0 }, little: 0 };
  const { from, handedOn, strangers } = await guarded({ asked });
  const [stranger, device] = [from('127.0.2.1'), from('127.0.2.2')];
  await expect.poll(() => handedOn.length).toBe(2);
  const of = (address: string) => handedOn.find(({ remoteAddress }) => remoteAddress === address);
  const its = of('127.0.2.2');
  strangers.shows(its, 'device');
  for (let k = 0; k < 10; k += 1) expect(strangers.mayAsk(its)).toBe(true);
  const ways = Array.from({ length: 5 }, () => strangers.mayAsk(of('127.0.2.1')));
  expect(ways).toEqual([true, true, true, false, false]);
  await expect.poll(() => stranger.open).toBe(false);
  const back = from('127.0.2.1');
  await expect.poll(() => back.open).toBe(false);
  await pause(350);
  const later = from('127.0.2.1');
  await expect.poll(() => handedOn.length).toBe(3);
  expect([later.open, device.open]).toEqual([true, true]);
  for (let k = 0; k < 4; k += 1) strangers.shows(its, null);
  await expect.poll(() => device.open).toBe(false);
});

test('very many machines together ask no more than so much, but for what each asks that asks little', async () => {
  const asked = { all: { most: 4, perSecond: 0 }, ofOne: { most: 9, perSecond: 0 }, little: 2 };
  const { from, handedOn, strangers } = await guarded({ asked });
  ['127.0.2.1', '127.0.2.2', '127.0.2.3'].forEach((address) => void from(address));
  await expect.poll(() => handedOn.length).toBe(3);
  const may = (k: number, times: number) =>
    Array.from({ length: times }, () => strangers.mayAsk(handedOn[k])).filter((each) => each).length;
  expect([may(0, 5), may(1, 5), may(2, 2)]).toEqual([5, 3, 2]);
});

test('a device has so many connections, and loses its oldest', async () => {
  const { many, handedOn, strangers } = await guarded({ connections: { most: 9, ofOne: 9, ofDevice: 2 } });
  const clients = many('127.0.2.1', 3);
  await expect.poll(() => handedOn.length).toBe(3);
  handedOn.forEach((socket) => strangers.shows(socket, 'device'));
  await expect.poll(() => open(clients)).toBe(2);
  expect(handedOn[0]?.destroyed).toBe(true);
});

test('what comes in by an encrypted connection is counted, and a stranger who says too much is shut out', async () => {
  const authority = await makeAuthority('shop', Date.now());
  const leaf = await makeLeaf(authority, ['127.0.0.1'], Date.now());
  const server = createSecureServer({ allowHTTP1: true, key: leaf.key, cert: leaf.certificate });
  const strangers = new Strangers({ ...LOOSE, bytes: 64 * 1024 });
  const listening = await listenAt(['127.0.0.1'], 0, server, strangers);
  listening.open();
  const { port } = listening;
  onTestFinished(async () => {
    await listening.close();
    strangers.close();
  });
  const says = async (kilobytes: number, protocol: string) => {
    const socket = connectSecure({
      host: '127.0.0.1',
      port,
      ca: authority.certificate,
      ALPNProtocols: [protocol],
    });
    socket.on('error', () => undefined);
    await new Promise((done) => socket.once('secureConnect', done));
    let isOpen = true;
    socket.on('close', () => (isOpen = false));
    socket.resume();
    socket.write(
      protocol === 'h2' ? 'PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n\0\0\0\x04\0\0\0\0\0' : 'GET / HTTP/1.1\r\n',
    );
    // Room for one byte more of the answers, which nobody answers; or a piece of a header.
    const piece = protocol === 'h2' ? '\0\0\x04\x08\0\0\0\0\0\0\0\0\x01' : 'x: 0123456789a\r\n';
    socket.write(Buffer.from(piece.repeat((kilobytes * 1024) / piece.length), 'latin1'));
    await pause(250);
    socket.destroy();
    return isOpen;
  };
  expect(await says(1, 'h2')).toBe(true);
  expect(await says(100, 'h2')).toBe(false);
  await pause(400);
  expect(await says(1, 'http/1.1')).toBe(true);
});

test('a pace is so many at once, and then so many a second', () => {
  let now = 0;
  const pace = new Pace({ most: 3, perSecond: 2 }, () => now);
  const take = (times: number) => Array.from({ length: times }, () => pace.take());
  expect(take(4)).toEqual([true, true, true, false]);
  now += 499;
  expect(take(1)).toEqual([false]);
  now += 1;
  expect(take(2)).toEqual([true, false]);
  expect(pace.isFull).toBe(false);
  now += 60_000;
  expect(pace.isFull).toBe(true);
  expect(take(4)).toEqual([true, true, true, false]);
});
