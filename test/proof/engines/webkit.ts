import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { until } from '../../e2e/kiosk-process.ts';
import { Display } from '../kiosk-display.ts';
import { type EngineKind, seenInPage, SIZE, styleInPage } from './engine.ts';
import { lackingForMiniBrowser, MINIBROWSER, surroundings, trusting } from './minibrowser.ts';
import { WebDriver } from './webdriver.ts';

/** Above the page it shows its address. */
const BAR = 38;

/** WebKit (WebKitGTK's MiniBrowser) by WebDriver, on a display and with a home of its own. */
export const WEBKIT: EngineKind = {
  name: 'WebKit',
  lacking: lackingForMiniBrowser,
  async start(authority) {
    const home = mkdtempSync(join(tmpdir(), 'shoulderline-webkit-'));
    onTestFinished(() => rmSync(home, { recursive: true, force: true }));
    const window = { width: SIZE.width, height: SIZE.height + BAR };
    const display = await Display.open(`${window.width}x${window.height}`, null);
    onTestFinished(() => display.close());
    const port = await freePort();
    const driven = ['WebKitWebDriver', '--host=127.0.0.1', `--port=${port}`];
    const [program = '', ...args] = trusting(authority, home, driven);
    const driver = spawn(program, args, { env: surroundings(display, home), stdio: 'ignore' });
    onTestFinished(() => void driver.kill('SIGTERM'));
    const at = `http://127.0.0.1:${port}`;
    await until('the driver', () => fetch(`${at}/status`).catch(() => null));
    const page = await WebDriver.open(at, {
      'webkitgtk:browserOptions': { binary: MINIBROWSER, args: ['--automation'] },
    });
    onTestFinished(() => page.close());
    await page.resize(window.width, window.height);
    const complaints: string[] = [];
    const hear = async () => void complaints.push(...(await page.run(heardInPage)));
    return {
      async open(address) {
        await hear();
        await page.open(address);
        await hear();
      },
      address: () => page.address(),
      scan: (text) => page.scan(text),
      fill: (selector, text) => page.fill(selector, text),
      click: (selector) => page.click(selector),
      style: (selector, property) => page.run(styleInPage, [selector, property] as const),
      async see(selector) {
        await hear();
        return page.run(seenInPage, selector);
      },
      async complaints() {
        await hear();
        return complaints;
      },
      picture: () => pictureOf(display, home),
    };
  },
};

/**
 * What a page complained of since it was last asked. This driver tells nothing of a console, so the page is listened to
 * from the first time that it is asked.
 */
function heardInPage(): string[] {
  const page = window as Window & { complaints?: string[] };
  if (page.complaints === undefined) {
    const complaints: string[] = [];
    page.complaints = complaints;
    for (const level of ['error', 'warn'] as const)
      console[level] = (...said: unknown[]) =>
        void complaints.push(`${level}: ${said.map(String).join(' ')}`);
    addEventListener('error', ({ message }) => complaints.push(message));
    addEventListener('unhandledrejection', ({ reason }) => complaints.push(String(reason)));
    addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI }) =>
      complaints.push(`forbidden by ${effectiveDirective}: ${blockedURI}`),
    );
  }
  return page.complaints.splice(0);
}

/** The driver's own picture waits for a compositor that is not there. */
async function pictureOf(display: Display, home: string): Promise<Uint8Array> {
  const path = join(home, 'page.png');
  // What was seen of the page may not be painted yet.
  await new Promise((over) => setTimeout(over, 1000));
  const page = `${SIZE.width}x${SIZE.height}+0+${BAR}`;
  display.run('import', '-window', 'root', '-crop', page, '+repage', path);
  return readFileSync(path);
}

function freePort(): Promise<number> {
  return new Promise((free) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => free(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}
