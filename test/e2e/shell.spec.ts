import { expect, test } from '@playwright/test';
import { Shell } from './shell-process.ts';

let shell: Shell;
let url = '';
test.beforeEach(async () => {
  shell = new Shell();
  url = await shell.told('loaded');
  await shell.becomes('document.readyState', 'complete');
});
test.afterEach(() => shell.close());

test('the built shell, run under a stand-in that is ready late, starts the hub and shows its screens full screen', async () => {
  expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  const options = await shell.told('window');
  expect(options).toMatch(/^\{"kiosk":true/);
  expect(options).toContain('"sandbox":true,"contextIsolation":true,"nodeIntegration":false');
  expect((await fetch(`${url}/api/health`)).status).toBe(200);
  await shell.becomes('document.querySelector("[data-choose-station]") !== null', true);
  await shell.ask('quit');
  expect(await shell.ended()).toBe(0);
  await expect(fetch(`${url}/api/health`)).rejects.toThrow();
});

test('a page goes nowhere but to the hub, opens no window, and may use the camera and nothing else', async () => {
  await shell.evaluate('location.href = "/board"');
  await shell.becomes('location.pathname', '/board');
  for (const address of ['https://example.org/', 'http://127.0.0.1:1/', 'http://localhost:1/']) {
    await shell.evaluate(`location.href = ${JSON.stringify(address)}`);
    await shell.told(`navigation refused ${address}`);
  }
  await shell.evaluate(
    'const form = document.body.appendChild(document.createElement("form")); form.action = "http://127.0.0.2:1/"; form.method = "post"; form.submit()',
  );
  expect(await shell.evaluate('location.href')).toBe(`${url}/board`);

  await shell.evaluate('void window.open("/board?beside")');
  await shell.told('opened deny');
  await expect.poll(() => shell.ask('targets')).toEqual([`${url}/board`]);

  const camera = 'navigator.mediaDevices.getUserMedia({ video: true }).then(() => "given", () => "refused")';
  expect(await shell.evaluate(camera)).toBe('given');
  const place =
    'new Promise((told) => navigator.geolocation.getCurrentPosition(() => told("given"), ({ code }) => told(code)))';
  expect(await shell.evaluate(place), 'refused for lack of a permission').toBe(1);
  expect(await shell.evaluate('Notification.requestPermission()')).toBe('denied');
});

test('a page that crashes is loaded again three times a minute; then a page says so, and “Try again” brings it back', async () => {
  for (let crash = 1; crash <= 3; crash += 1) {
    await shell.evaluate('void Object.assign(window, { crashed: false })');
    await shell.crash();
    await shell.told('reload', crash);
    await shell.becomes('window.crashed === undefined && document.readyState', 'complete');
    expect(await shell.evaluate('location.origin')).toBe(url);
  }
  await shell.crash();
  await shell.becomes(
    'document.querySelector("[data-stopped=screen] h1")?.textContent',
    'This screen keeps failing',
  );
  await shell.evaluate('document.querySelector("button").click()');
  await shell.becomes('location.origin', url);
  expect((shell.said.match(/^STAND-IN reload/gm) ?? []).length).toBe(3);
});

test(
  'a hub that dies is back on its address while the page stays; after five deaths a page says so',
  { tag: '@proof' },
  async () => {
    await shell.evaluate('void Object.assign(window, { held: true })');
    for (let death = 1; death <= 5; death += 1) {
      process.kill(Number(await shell.told('hub-listens', death)), 'SIGKILL');
      if (death === 5) break;
      await shell.told('hub-listens', death + 1);
      expect((await fetch(`${url}/api/health`)).status).toBe(200);
      expect(await shell.evaluate('window.held')).toBe(true);
    }
    await shell.becomes('document.querySelector("[data-stopped]")?.dataset.stopped', 'hub');
    await shell.evaluate('document.querySelector("button").click()');
    await shell.told('hub-listens', 6);
    await shell.becomes('location.origin', url);
  },
);

test('the window cannot be closed before full screen was left; then closing it ends all', async () => {
  await shell.ask('close');
  await shell.told('close held');
  expect((await fetch(`${url}/api/health`)).status).toBe(200);
  const left = await fetch(`${url}/api/kiosk/leave`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });
  expect(left.status).toBe(200);
  await shell.told('kiosk false');
  await shell.ask('close');
  expect(await shell.ended()).toBe(0);
  await expect(fetch(`${url}/api/health`)).rejects.toThrow();
});
