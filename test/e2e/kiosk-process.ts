import { type Browser, chromium, type Locator, type Page } from '@playwright/test';
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { findBrowser } from '../../main/start/find-browser.mjs';
import { BareWindow } from './bare-window.ts';
import { freshData, removeData } from './hub-process.ts';

const ROOT = join(import.meta.dirname, '..', '..');

/** After so long without an answer, it is asked anew. */
const LOOK_MS = 5000;

/** Asks again until it is given something; throws with what was waited for. */
export async function until<T>(
  what: string,
  ask: () => T | null | undefined | Promise<T | null | undefined>,
  seconds = 30,
): Promise<T> {
  for (const end = Date.now() + seconds * 1000; Date.now() < end; await pause(20)) {
    const got = await ask();
    if (got !== null && got !== undefined) return got;
  }
  throw new Error(`waited ${seconds} s in vain for ${what}`);
}

/** `npm start` as a process: the hub, and its screens in a real Chromium that can be looked into. */
export class Kiosk {
  readonly data: string;
  readonly start: ChildProcess;
  said = '';
  #browser: Browser | null = null;

  private constructor(data: string, start: ChildProcess) {
    this.data = data;
    this.start = start;
    const hear = (chunk: Buffer) => (this.said += chunk.toString());
    start.stdout?.on('data', hear);
    start.stderr?.on('data', hear);
  }

  /** On the display that `env` names; with none, in a Chromium without a window. */
  static async open(env: Readonly<Record<string, string>> = {}): Promise<Kiosk> {
    const kiosk = Kiosk.start(freshData(), [], env);
    await kiosk.listened(1);
    return kiosk;
  }

  /** The same without waiting for anything, with more to say to it. */
  static start(data: string, args: readonly string[], env: Readonly<Record<string, string>> = {}): Kiosk {
    const looked = join(data, 'chromium-looked-into');
    const flags = `--remote-debugging-port=0${env.DISPLAY === undefined ? ' --headless' : ''}`;
    writeFileSync(looked, `#!/bin/sh\nexec '${findBrowser() ?? ''}' ${flags} "$@"\n`);
    chmodSync(looked, 0o755);
    const start = spawn(process.execPath, [join(ROOT, 'main', 'start', 'start.mjs'), ...args], {
      env: {
        ...process.env,
        DISPLAY: 'none',
        ELECTRON_OVERRIDE_DIST_PATH: data,
        SHOULDERLINE_DATA: data,
        SHOULDERLINE_PORT: '0',
        CHROMIUM: looked,
        ...env,
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    return new Kiosk(data, start);
  }

  /** The address, once the hub has said so often that it listens. */
  async listened(times: number): Promise<string> {
    return until(
      `ready line ${times}`,
      () => [...this.said.matchAll(/LISTENING (\S+)/g)][times - 1]?.[1],
      60,
    );
  }

  /** The hub's process. */
  hub(): number {
    const pid = this.#child('dist/hub/main.js');
    if (pid === null) throw new Error('there is no hub now');
    return pid;
  }

  /** The browser's process; 0 while there is none. */
  browser(): number {
    return this.otherBrowser(0) ?? 0;
  }

  /** Its process once it is another one than this. */
  otherBrowser(than: number): number | null {
    const pid = this.#child(`user-data-dir=${join(this.data, 'kiosk')}`);
    return pid === than ? null : pid;
  }

  #child(running: string): number | null {
    const found = spawnSync('pgrep', ['-P', String(this.start.pid), '-f', running], { encoding: 'utf8' });
    const pid = Number(found.stdout.trim().split('\n')[0]);
    return pid > 0 ? pid : null;
  }

  /** The page that the window shows now. A browser that ends meanwhile, or a page that dies, is looked into anew. */
  async page(): Promise<Page> {
    return until('a page', async () => {
      await this.#browser?.close().catch(() => undefined);
      this.#browser = await this.#lookInto();
      const page = this.#browser?.contexts()[0]?.pages()[0];
      return page?.waitForLoadState('load', { timeout: LOOK_MS }).then(
        () => page,
        () => null,
      );
    });
  }

  /** The page that the window shows, once it shows this. */
  async pageWith(shown: (page: Page) => Locator): Promise<Page> {
    return until('a page with it', async () => {
      const page = await this.page();
      return shown(page)
        .waitFor({ timeout: LOOK_MS })
        .then(
          () => page,
          () => null,
        );
    });
  }

  async #lookInto(): Promise<Browser | null> {
    try {
      const { port } = this.#looked();
      return await chromium.connectOverCDP(`http://127.0.0.1:${port}`, { timeout: LOOK_MS });
    } catch {
      return null;
    }
  }

  /** The window with nobody else looking into it. */
  async bare(): Promise<BareWindow> {
    await this.#browser?.close();
    this.#browser = null;
    const { port, path } = this.#looked();
    return BareWindow.lookInto(`ws://127.0.0.1:${port}${path}`);
  }

  #looked(): { port: string; path: string } {
    const [port = '', path = ''] = readFileSync(join(this.data, 'kiosk', 'DevToolsActivePort'), 'utf8').split(
      '\n',
    );
    return { port, path };
  }

  /** The page's process dies. */
  async crash(): Promise<void> {
    const page = await this.page();
    const session = await page.context().newCDPSession(page);
    // Nothing answers that any more.
    const crashed = page.waitForEvent('crash');
    void session.send('Page.crash').catch(() => undefined);
    await crashed;
  }

  /** What the browser shows: pages, its own too, workers apart. */
  async pages(page: Page): Promise<string[]> {
    const session = await page.context().newCDPSession(page);
    const { targetInfos } = await session.send('Target.getTargets');
    await session.detach();
    return targetInfos
      .filter(({ type }) => !type.includes('worker'))
      .map(({ type, url }) => `${type} ${url}`);
  }

  async close(): Promise<void> {
    await this.end();
    removeData(this.data);
  }

  /** Ends it and leaves its data where they are. */
  async end(): Promise<void> {
    await this.#browser?.close().catch(() => undefined);
    if (this.start.exitCode !== null) return;
    const ended = new Promise((over) => this.start.once('exit', over));
    this.start.kill('SIGTERM');
    await ended;
  }
}
