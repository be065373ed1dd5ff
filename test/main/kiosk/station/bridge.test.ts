import { connect } from 'node:http2';
import { beforeAll, expect, onTestFinished, test } from 'vitest';
import { type CertifiedKey, makeAuthority, makeLeaf } from '#main/network/certificates.ts';
import { type Bridge, openBridge } from '#main/kiosk/station/bridge.ts';
import { shownAuthority, whoAnswers } from '#main/kiosk/station/shown-certificate.ts';
import { tlsHub } from './tls-hub.ts';

const HERE = ['127.0.0.2'];
const DAY_MS = 86_400_000;
const now = Date.now();
let shop: CertifiedKey;
let thief: CertifiedKey;
let ours: CertifiedKey;
let stolen: CertifiedKey;
beforeAll(async () => {
  shop = await makeAuthority('shop', now);
  // A namesake.
  thief = await makeAuthority('shop', now);
  ours = await makeLeaf(shop, HERE, now);
  stolen = await makeLeaf(thief, HERE, now);
});

/** What comes of asking by a bridge, as a browser does, and what the bridge told of. */
async function byBridge(url: string, authority: string | null) {
  const told: string[] = [];
  const bridge = await openBridge(url, (why) => told.push(why));
  onTestFinished(() => bridge.close());
  if (authority !== null) bridge.trust(authority);
  return { bridge, told, ask: () => askBy(bridge) };
}

function askBy({ flags }: Bridge): Promise<string> {
  const port = /127\.0\.0\.1:(\d+),/.exec(flags.join())?.[1] ?? '';
  // A browser knows the bridge by its key, which is in the flags.
  const session = connect(`https://127.0.0.1:${port}`, { rejectUnauthorized: false });
  return new Promise<string>((told) => {
    session.on('error', () => told('nothing'));
    session.on('close', () => told('nothing'));
    const asked = session.request({ ':path': '/' });
    let text = '';
    asked.on('error', () => told('nothing'));
    asked.on('data', (piece: Buffer) => (text += piece.toString()));
    asked.on('end', () => told(text === '' ? 'nothing' : text));
    asked.end();
  }).finally(() => session.destroy());
}

test('what the trusted authority vouches for is reached, with a renewed certificate too; nothing before it is trusted', async () => {
  const hub = await tlsHub(ours, shop.certificate);
  const { bridge, ask } = await byBridge(hub.url, null);
  expect(await ask()).toBe('nothing');
  expect(hub.asked()).toBe(0);
  bridge.trust(shop.certificate);
  expect(await ask()).toBe('in');
  await hub.stop();
  const port = Number(new URL(hub.url).port);
  await tlsHub(await makeLeaf(shop, HERE, now), shop.certificate, port);
  expect(await ask()).toBe('in');
});

test('whoever shows a key of their own and the shop’s certificate behind it gets no request', async () => {
  const hub = await tlsHub(stolen, shop.certificate);
  const { ask, told } = await byBridge(hub.url, shop.certificate);
  expect(await ask()).toBe('nothing');
  expect(told).toEqual(['other']);
  expect(hub.asked()).toBe(0);
  expect(await whoAnswers(hub.url, shop.certificate)).toBe('other');
  expect(await shownAuthority(hub.url), 'nor is it shown to be compared as if it were the shop’s').toBe(
    'stranger',
  );
});

test('who answers is told apart: the hub, another, one for other addresses, one for other days, nobody', async () => {
  const cases = [
    [ours, shop.certificate, 'hub'],
    [stolen, thief.certificate, 'other'],
    [await makeLeaf(shop, ['127.0.0.9'], now), shop.certificate, 'name'],
    [await makeLeaf(shop, HERE, now - 500 * DAY_MS), shop.certificate, 'clock'],
    [await makeLeaf(shop, HERE, now + 5 * DAY_MS), shop.certificate, 'clock'],
  ] as const;
  for (const [leaf, behind, answers] of cases) {
    const hub = await tlsHub(leaf, behind);
    expect(await whoAnswers(hub.url, shop.certificate)).toBe(answers);
    await hub.stop();
    expect(await whoAnswers(hub.url, shop.certificate)).toBe('away');
    expect(await shownAuthority(hub.url)).toBe('away');
  }
});

test('the authority that is shown to be compared is the one that has signed, by the fingerprint of its certificate', async () => {
  const hub = await tlsHub(ours, shop.certificate);
  const shown = await shownAuthority(hub.url);
  expect(shown).toMatchObject({
    fingerprint: expect.stringMatching(/^([\dA-F]{2}:){31}[\dA-F]{2}$/) as string,
  });
  expect(typeof shown === 'string' ? '' : shown.certificate.trim()).toBe(shop.certificate.trim());
});

test('another authority that is trusted from now on ends what was open before', async () => {
  const hub = await tlsHub(ours, shop.certificate);
  const { bridge, ask } = await byBridge(hub.url, shop.certificate);
  expect(await ask()).toBe('in');
  bridge.trust(thief.certificate);
  expect(await ask()).toBe('nothing');
});
