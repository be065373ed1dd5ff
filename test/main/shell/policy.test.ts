import { expect, test } from 'vitest';
import { asksToLeave, holdPage, mayNavigate, mayUse, windowOptions } from '#main/shell/policy.ts';

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
