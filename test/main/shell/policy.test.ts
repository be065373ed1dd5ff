import { expect, test } from 'vitest';
import { makeAuthority, makeLeaf } from '#main/network/certificates.ts';
import {
  asksToLeave,
  GOOD,
  holdPage,
  judgeCertificate,
  mayNavigate,
  mayUse,
  windowOptions,
} from '#main/shell/policy.ts';

const HUB = 'http://127.0.0.1:7517';

test('the window is full screen, sandboxed, isolated, and without Node', () => {
  const { kiosk, webPreferences } = windowOptions('/preload.cjs');
  expect(kiosk).toBe(true);
  expect(webPreferences).toMatchObject({
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    webSecurity: true,
    devTools: false,
  });
});

test.each([
  'https://example.org/',
  'http://127.0.0.1:7518/',
  'file:///etc/passwd',
  'javascript:1',
  'nonsense',
])('%s is not gone to', (address) => {
  expect(mayNavigate(address, HUB)).toBe(false);
});

test('only the hub’s page may use the camera, and nothing else', () => {
  expect(mayNavigate(`${HUB}/board`, HUB)).toBe(true);
  expect(mayUse('media', `${HUB}/station/bench`, HUB)).toBe(true);
  expect(mayUse('geolocation', `${HUB}/`, HUB)).toBe(false);
  expect(mayUse('media', 'https://example.org/', HUB)).toBe(false);
});

test('navigation, new windows and embedded views are refused', () => {
  const handlers = new Map<string, (event: { preventDefault(): void }, address: string) => void>();
  let open: (() => { action: string }) | undefined;
  const page = {
    on: (name: string, handler: (event: { preventDefault(): void }, address: string) => void) =>
      void handlers.set(name, handler),
    setWindowOpenHandler: (handler: () => { action: string }) => void (open = handler),
  };
  holdPage(page as unknown as Parameters<typeof holdPage>[0], HUB);
  const refused = (name: string, address: string) => {
    let prevented = false;
    handlers.get(name)?.({ preventDefault: () => void (prevented = true) }, address);
    return prevented;
  };
  expect(refused('will-navigate', 'https://example.org/')).toBe(true);
  expect(refused('will-redirect', 'https://example.org/')).toBe(true);
  expect(refused('will-attach-webview', '')).toBe(true);
  expect(refused('will-navigate', `${HUB}/office`)).toBe(false);
  expect(open?.()).toEqual({ action: 'deny' });
});

test('full screen is left for the hub’s own word and for nothing else', () => {
  expect(asksToLeave({ kind: 'leave-full-screen' })).toBe(true);
  for (const other of [null, 'leave-full-screen', {}, { kind: 'print' }])
    expect(asksToLeave(other)).toBe(false);
});

test('of certificates only the hub’s own is good, signed by the shop that somebody has compared, for this host and this day', async () => {
  const now = Date.now();
  const DAY_MS = 86_400_000;
  const station = 'https://192.168.1.20:7518';
  const [shop, other] = [await makeAuthority('shop', now), await makeAuthority('shop', now)];
  const judge = async (by: typeof shop, names: string[], at = now, hostname = '192.168.1.20') =>
    judgeCertificate(
      { hostname, certificate: { data: (await makeLeaf(by, names, now)).certificate } },
      station,
      shop.certificate,
      at,
    );
  const names = ['192.168.1.20', 'planer-pc.local'];
  expect(await judge(shop, names)).toBe(GOOD);
  expect(await judge(other, names), 'a namesake').not.toBe(GOOD);
  expect(await judge(shop, ['192.168.1.21'])).not.toBe(GOOD);
  expect(await judge(shop, names, now + 500 * DAY_MS)).not.toBe(GOOD);
  expect(await judge(shop, names, now - 500 * DAY_MS)).not.toBe(GOOD);
  expect(await judge(shop, names, now, 'planer-pc.local'), 'another host than was asked for').not.toBe(GOOD);
  const nonsense = { hostname: '192.168.1.20', certificate: { data: 'none' } };
  expect(judgeCertificate(nonsense, station, shop.certificate, now)).not.toBe(GOOD);
  const { certificate } = await makeLeaf(shop, names, now);
  const good = { hostname: '192.168.1.20', certificate: { data: certificate } };
  expect(judgeCertificate(good, station, null, now), 'before anybody has compared').not.toBe(GOOD);
});
