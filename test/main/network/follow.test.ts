import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { connect, type PeerCertificate } from 'node:tls';
import { z } from 'zod';
import { expect, onTestFinished, test } from 'vitest';
import { NetworkDesk } from '#main/network/network-desk.ts';
import { disk } from '#main/store/files/disk.ts';
import { askOver } from './ask-over.ts';

const DAY_MS = 86_400_000;
const KEYS = z.object({ authority: z.object({ certificate: z.string() }) });

/** The certificate that is shown there, whatever its days are. */
function shownAt(url: string): Promise<PeerCertificate> {
  const { hostname, port } = new URL(url);
  return new Promise((told, failed) => {
    const socket = connect({ host: hostname, port: Number(port), rejectUnauthorized: false }, () => {
      const shown = socket.getPeerCertificate();
      socket.destroy();
      told(shown);
    });
    socket.on('error', failed);
  });
}

test('a page about the certificate whose port something else holds is opened once that is gone', async () => {
  const data = mkdtempSync(join(tmpdir(), 'shoulderline-follow-'));
  const other = createServer().listen(0, '127.0.0.5');
  await once(other, 'listening');
  const trustPort = z.object({ port: z.number() }).parse(other.address()).port;
  const troubles: string[] = [];
  const desk = await NetworkDesk.open({
    port: disk,
    data,
    told: { on: true, hosts: ['127.0.0.5'], port: 0, trustPort },
    pin: () => true,
    serve: async () => async () => undefined,
    say: () => undefined,
    report: (trouble) => troubles.push(trouble),
    language: () => 'en',
    headerLimit: 65_536,
  });
  onTestFinished(async () => {
    await desk.stop();
    rmSync(data, { recursive: true, force: true });
  });
  await desk.settle();
  await desk.settle();
  expect(desk.state).toBe('on');
  expect(desk.addresses.map(({ trust }) => trust)).toEqual([null]);
  expect(troubles).toHaveLength(1);
  other.close();
  await once(other, 'close');
  await desk.settle();
  expect(desk.addresses.map(({ trust }) => trust)).toEqual([`http://127.0.0.5:${trustPort}`]);
  expect(await (await fetch(`http://127.0.0.5:${trustPort}/`)).text()).toContain('Trust this shop');
});

test('where this machine’s addresses change, and a month before the certificate ends, the network goes on by itself by the same authority', async () => {
  const data = mkdtempSync(join(tmpdir(), 'shoulderline-follow-'));
  let hosts = ['127.0.0.2'];
  let now = Date.now();
  let ends = 0;
  const lines: string[] = [];
  const desk = await NetworkDesk.open({
    port: disk,
    data,
    told: {
      on: true,
      get hosts() {
        return hosts;
      },
      port: 0,
      trustPort: 0,
    },
    pin: () => true,
    serve: async ({ server, hosts: names }) => {
      server.on('request', (_request, answer) => answer.end(JSON.stringify(names())));
      return async () => void (ends += 1);
    },
    say: (line) => lines.push(line),
    report: (trouble, error) => expect.fail(`${trouble}: ${String(error)}`),
    language: () => 'en',
    headerLimit: 65_536,
    now: () => now,
  });
  onTestFinished(async () => {
    await desk.stop();
    rmSync(data, { recursive: true, force: true });
  });
  const authority = () =>
    KEYS.parse(JSON.parse(readFileSync(join(data, 'network-keys.json'), 'utf8'))).authority.certificate;
  const url = () => desk.addresses[0]?.screens ?? '';
  await desk.settle();
  const [first, before, trusted] = [url(), await shownAt(url()), authority()];
  await desk.settle();
  expect((await shownAt(first)).serialNumber).toBe(before.serialNumber);

  hosts = ['127.0.0.3', '127.0.0.4'];
  await desk.settle();
  expect(url()).toBe(first.replace('127.0.0.2', '127.0.0.3'));
  await expect(shownAt(first)).rejects.toThrow('ECONNREFUSED');
  for (const { screens } of desk.addresses)
    expect(String((await askOver(screens, trusted, 'GET', '/')).body.text)).toContain(new URL(screens).host);
  expect(lines.slice(-2)).toEqual(desk.addresses.map(({ screens }) => `NETWORK ${screens}`));

  const second = await shownAt(url());
  now += 368 * DAY_MS;
  await desk.settle();
  const renewed = await shownAt(url());
  expect(renewed.serialNumber).not.toBe(second.serialNumber);
  expect(Date.parse(renewed.valid_to)).toBeGreaterThan(now + 390 * DAY_MS);
  expect(authority()).toBe(trusted);
  expect(ends).toBe(0);

  hosts = [];
  await desk.settle();
  expect([desk.state, desk.addresses, ends]).toEqual(['no-address', [], 1]);
});
