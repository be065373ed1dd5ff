import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser } from '../../main/start/find-browser.mjs';
import { until } from '../e2e/kiosk-process.ts';

const TOOLS = ['Xvfb', 'openbox', 'xdotool', 'xprop', 'import', 'compare'];

/** What a display with a kiosk on it needs and this machine lacks. */
export function lacking(): string[] {
  const browser = findBrowser() === null ? ['chromium'] : [];
  return [
    ...TOOLS.filter((tool) => !['/usr/bin', '/usr/local/bin'].some((at) => existsSync(join(at, tool)))),
    ...browser,
  ];
}

/** A display of its own, with a window manager on it or none. */
export class Display {
  readonly name: string;
  readonly #children: ChildProcess[];

  private constructor(name: string, children: ChildProcess[]) {
    this.name = name;
    this.#children = children;
  }

  static async open(size: string, manager: readonly string[] | null): Promise<Display> {
    const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', `${size}x24`, '-nolisten', 'tcp'], {
      stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
    });
    let number = '';
    server.stdio[3]?.on('data', (chunk: Buffer) => (number += chunk.toString()));
    const name = `:${await until('a display', () => /^(\d+)\n/.exec(number)?.[1])}`;
    const display = new Display(name, [server]);
    const [command, ...rest] = manager ?? [];
    if (command !== undefined) {
      display.#children.push(spawn(command, rest, { env: display.env(), stdio: 'ignore' }));
      await until('the window manager', () =>
        /window id # 0x/.exec(display.run('xprop', '-root', '_NET_SUPPORTING_WM_CHECK')),
      );
    }
    return display;
  }

  env(more: Readonly<Record<string, string>> = {}): NodeJS.ProcessEnv {
    return { ...process.env, ...more, DISPLAY: this.name };
  }

  run(command: string, ...args: string[]): string {
    return execFileSync(command, args, {
      env: this.env(),
      encoding: 'utf8',
      timeout: 20_000,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  }

  /** Real keys and the real mouse. */
  xdotool(...args: string[]): void {
    this.run('xdotool', ...args);
  }

  /** How many windows the window manager knows. */
  windows(): number {
    return this.run('xprop', '-root', '_NET_CLIENT_LIST').match(/0x[0-9a-f]+/g)?.length ?? 0;
  }

  picture(path: string): void {
    this.run('import', '-window', 'root', path);
  }

  close(): void {
    for (const child of this.#children.reverse()) child.kill('SIGTERM');
  }
}

/** The dots in which two pictures differ. */
export function differing(one: string, other: string): number {
  try {
    execFileSync('compare', ['-metric', 'AE', one, other, 'null:'], { stdio: 'pipe' });
    return 0;
  } catch (error) {
    const said = error instanceof Error && 'stderr' in error ? String(error.stderr) : '';
    return Number.parseFloat(said) || Number.POSITIVE_INFINITY;
  }
}
