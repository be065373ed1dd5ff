import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { X509Certificate } from 'node:crypto';
import { beforeAll, expect, onTestFinished, test } from 'vitest';
import { type CertifiedKey, makeAuthority, makeLeaf } from '#main/network/certificates.ts';
import { KeptTrust } from '#main/kiosk/station/kept-trust.ts';
import { StationKeeper } from '#main/kiosk/station/station-keeper.ts';
import { disk } from '#main/store/files/disk.ts';
import { tlsHub } from './tls-hub.ts';

const HERE = ['127.0.0.2'];
const now = Date.now();
let shop: CertifiedKey;
let other: CertifiedKey;
const leafOf = (authority: CertifiedKey) => makeLeaf(authority, HERE, now);
const fingerprint = ({ certificate }: CertifiedKey) => new X509Certificate(certificate).fingerprint256;
beforeAll(async () => {
  shop = await makeAuthority('shop', now);
  other = await makeAuthority('other', now);
});

function freshFolder(): string {
  const data = mkdtempSync(join(tmpdir(), 'shoulderline-station-'));
  onTestFinished(() => rmSync(data, { recursive: true, force: true }));
  return data;
}

/** A station in a window that only notes what it shows. */
async function stationAt(url: string, data: string, given: string | null = null) {
  const said: string[] = [];
  const trusted: string[] = [];
  const screens = { shown: '', broken: false };
  const keeper = new StationKeeper({
    asked: { url, fingerprint: given },
    kept: await KeptTrust.open(disk, data),
    window: {
      show(page) {
        screens.shown = page;
        screens.broken = false;
      },
      isBroken: () => Promise.resolve(screens.broken),
    },
    trusted: (authority) => trusted.push(authority),
    say: (line) => said.push(line),
    language: 'en',
  });
  onTestFinished(() => keeper.end());
  await keeper.start(20);
  const page = async () => {
    const answer = await fetch(screens.shown).catch(() => null);
    return (await answer?.text()) ?? '';
  };
  return {
    keeper,
    said,
    trusted,
    screens,
    page,
    /** What the page tells that is shown now; the address where that is the screens. */
    tells: async () =>
      screens.shown === url ? url : (/data-station="(\w+)"/.exec(await page())?.[1] ?? 'nothing'),
    tap: (act: string) =>
      fetch(`${screens.shown}/${act}`, { method: 'POST', headers: { origin: screens.shown } }),
  };
}

test('nothing is shown of a hub before somebody has compared; then its screens are, at the next start too', async () => {
  const hub = await tlsHub(await leafOf(shop), shop.certificate);
  const data = freshFolder();
  const station = await stationAt(hub.url, data);
  expect(await station.tells()).toBe('first');
  expect((await station.page()).replace(/<br>/g, '')).toContain(fingerprint(shop));
  expect(station.said.join()).toContain(fingerprint(shop));
  expect(station.trusted).toEqual([]);
  await station.tap('trust');
  await expect.poll(station.tells).toBe(hub.url);
  expect(station.trusted.map((pem) => pem.trim())).toEqual([shop.certificate.trim()]);
  await expect.poll(() => readdirSync(data)).toEqual(['station.json']);
  expect(statSync(join(data, 'station.json')).mode & 0o777).toBe(0o600);
  const again = await stationAt(hub.url, data);
  expect(again.screens.shown).toBe(hub.url);
  expect(again.said).toEqual([]);
});

test('whoever sees another fingerprint says so, and nothing goes on until somebody compares again', async () => {
  const hub = await tlsHub(await leafOf(shop), shop.certificate);
  const station = await stationAt(hub.url, freshFolder());
  await station.tap('differs');
  await expect.poll(station.tells).toBe('warned');
  await new Promise((later) => setTimeout(later, 100));
  expect(await station.tells()).toBe('warned');
  await station.tap('again');
  await expect.poll(station.tells).toBe('first');
  expect(station.trusted).toEqual([]);
});

test('a fingerprint that was given is compared by the program: the same goes on by itself, another one never', async () => {
  const hub = await tlsHub(await leafOf(shop), shop.certificate);
  const data = freshFolder();
  const wrong = await stationAt(hub.url, data, fingerprint(other));
  expect(await wrong.tells()).toBe('given');
  expect(wrong.said.join()).toContain(`has the fingerprint ${fingerprint(shop)}, and is not trusted`);
  expect((await wrong.tap('trust')).status).toBe(404);
  expect(wrong.trusted).toEqual([]);
  const right = await stationAt(hub.url, data, fingerprint(shop));
  expect(right.screens.shown).toBe(hub.url);
  // What is given goes over what was kept.
  expect(await (await stationAt(hub.url, data, fingerprint(other))).tells()).toBe('given');
});

test('a key that has changed is told of and its screens never shown; the old one back, they are again', async () => {
  const hub = await tlsHub(await leafOf(shop), shop.certificate);
  const port = Number(new URL(hub.url).port);
  const data = freshFolder();
  (await stationAt(hub.url, data, fingerprint(shop))).keeper.end();
  const first = await stationAt(hub.url, data);
  expect(first.screens.shown).toBe(hub.url);
  await hub.stop();
  const changed = await tlsHub(await leafOf(other), other.certificate, port);
  // While it stands, as a connection of the window tells.
  first.keeper.failed('other');
  await expect.poll(first.tells).toBe('changed');
  // And at a start.
  const second = await stationAt(hub.url, data);
  expect(await second.tells()).toBe('changed');
  expect((await second.page()).replace(/<br>/g, '')).toContain(fingerprint(other));
  await changed.stop();
  await tlsHub(await leafOf(shop), shop.certificate, port);
  await expect.poll(second.tells).toBe(hub.url);
  expect(changed.asked()).toBe(0);
});

test('a hub that is away is waited for, and shown from what the browser has kept if it was shown before', async () => {
  const leaf = await leafOf(shop);
  const hub = await tlsHub(leaf, shop.certificate);
  const port = Number(new URL(hub.url).port);
  const data = freshFolder();
  await hub.stop();
  const station = await stationAt(hub.url, data, fingerprint(shop));
  expect(await station.tells()).toBe('away');
  const back = await tlsHub(leaf, shop.certificate, port);
  await expect.poll(station.tells).toBe(hub.url);
  await expect.poll(() => readFileSync(join(data, 'station.json'), 'utf8')).toContain(hub.url);
  station.keeper.end();
  await back.stop();
  const kept = await stationAt(hub.url, data);
  expect(kept.screens.shown).toBe(hub.url);
  await new Promise((later) => setTimeout(later, 100));
  expect(kept.screens.shown, 'what was kept stays').toBe(hub.url);
  // The browser had kept nothing after all.
  kept.screens.broken = true;
  await expect.poll(kept.tells).toBe('away');
  await tlsHub(leaf, shop.certificate, port);
  await expect.poll(kept.tells).toBe(hub.url);
});

test('what answers otherwise than a hub is told of', async () => {
  const { createServer } = await import('node:net');
  const plain = createServer((socket) => socket.on('error', () => undefined).end('HTTP/1.1 400 no\r\n\r\n'));
  await new Promise<void>((listening) => plain.listen(0, '127.0.0.2', listening));
  onTestFinished(() => void plain.close());
  const bound = plain.address();
  const url = `https://127.0.0.2:${typeof bound === 'object' && bound !== null ? bound.port : 0}`;
  expect(await (await stationAt(url, freshFolder())).tells()).toBe('stranger');
  const elsewhere = await tlsHub(await makeLeaf(shop, ['127.0.0.9'], now), shop.certificate);
  expect(await (await stationAt(elsewhere.url, freshFolder(), fingerprint(shop))).tells()).toBe('name');
});

test('what is trusted and cannot be read is kept aside, and somebody compares again', async () => {
  const hub = await tlsHub(await leafOf(shop), shop.certificate);
  for (const text of ['{"format":1,"authority":"none","shown":null}', '{"format', '{"format":1}']) {
    const data = freshFolder();
    writeFileSync(join(data, 'station.json'), text);
    expect(await (await stationAt(hub.url, data)).tells()).toBe('first');
    expect(readdirSync(data)).toContain('station.json.unreadable');
  }
  const data = freshFolder();
  writeFileSync(join(data, 'station.json'), '{"format":2}');
  await expect(KeptTrust.open(disk, data)).rejects.toThrow('newer version');
});

test('a page that dies too often is told of, and loaded again when somebody asks', async () => {
  const hub = await tlsHub(await leafOf(shop), shop.certificate);
  const station = await stationAt(hub.url, freshFolder(), fingerprint(shop));
  let renewed = 0;
  station.keeper.failing(4, () => (renewed += 1));
  await expect.poll(station.tells).toBe('failing');
  await new Promise((later) => setTimeout(later, 100));
  expect(await station.tells()).toBe('failing');
  await station.tap('again');
  await expect.poll(station.tells).toBe(hub.url);
  expect(renewed).toBe(1);
});
