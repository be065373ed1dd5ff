import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, onTestFinished } from 'vitest';
import { until } from '../../e2e/kiosk-process.ts';
import { Display } from '../kiosk-display.ts';
import { lackingForMiniBrowser, MINIBROWSER, surroundings, trusting } from './minibrowser.ts';
import { keptPicture } from './pictured.ts';
import { has } from './trust.ts';

/** A page is there, and what a key did is done, within this. */
export const SETTLED_MS = 4000;
const BETWEEN_KEYS_MS = 300;

/** WebKit as a person starts it, with no driver, until the test has ended: worked by real keys, and heard by what it writes of its console from a page's first line on. */
export class KeyedWebKit {
  readonly #display: Display;
  readonly #home: string;
  #said = '';

  private constructor(display: Display, home: string) {
    this.#display = display;
    this.#home = home;
  }

  /** Opens a page; trusts this authority besides those of the machine. */
  static async start(address: string, authority: string | null): Promise<KeyedWebKit> {
    const lacking = [
      ...lackingForMiniBrowser(),
      ...['openbox', 'xdotool'].filter((program) => !has(program)),
      ...(has('xprop') ? [] : ['x11-utils']),
    ];
    expect(lacking, `apt-get install -y --no-install-recommends ${lacking.join(' ')}`).toEqual([]);
    const home = mkdtempSync(join(tmpdir(), 'shoulderline-webkit-keys-'));
    onTestFinished(() => rmSync(home, { recursive: true, force: true }));
    const display = await Display.open('1280x838', ['openbox']);
    onTestFinished(() => display.close());
    const keyed = new KeyedWebKit(display, home);
    const command = [MINIBROWSER, '--enable-write-console-messages-to-stdout=true', address];
    const [program = '', ...args] = trusting(authority, home, command);
    const browser = spawn(program, args, {
      env: surroundings(display, home),
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    for (const stream of [browser.stdout, browser.stderr])
      stream.on('data', (piece: Buffer) => (keyed.#said += piece.toString()));
    onTestFinished(async () => {
      const ended = new Promise((over) => browser.once('exit', over));
      browser.kill('SIGTERM');
      await ended;
    });
    await until('the window', () => (display.windows() > 0 ? true : null));
    await pause(SETTLED_MS);
    return keyed;
  }

  /** Presses keys one after another, as a person does. */
  async press(...keys: string[]): Promise<void> {
    for (const key of keys) {
      this.#display.xdotool('key', key);
      await pause(BETWEEN_KEYS_MS);
    }
  }

  type(text: string): void {
    this.#display.xdotool('type', '--delay', '5', text);
  }

  /** As a scanner does. */
  async scan(text: string): Promise<void> {
    this.type(`${text}\n`);
    await pause(SETTLED_MS / 2);
  }

  async open(address: string): Promise<void> {
    await this.press('ctrl+l');
    this.type(address);
    await this.press('Return');
    await pause(SETTLED_MS);
  }

  picture(name: string): void {
    const path = join(this.#home, 'window.png');
    this.#display.picture(path);
    keptPicture(name, readFileSync(path));
  }

  /** The errors and warnings that its console was given. */
  complaints(): string[] {
    return this.#said.split('\n').filter((line) => /: CONSOLE .*?\b(ERROR|WARN)\b/.test(line));
  }
}
