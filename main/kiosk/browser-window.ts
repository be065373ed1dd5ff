import { type ChildProcess, spawn } from 'node:child_process';
import { Readable, Writable } from 'node:stream';
import { Budget } from './budget.ts';
import { DevToolsPipe } from './devtools-pipe.ts';
import { displayPlace, type Place } from './display-size.ts';
import { PageWatch } from './page-watch.ts';
import { profileHolder } from './profile-holder.ts';

export interface BrowserWindowOptions {
  readonly browser: string;
  /** Where it keeps what it knows of the screens: the station, marks that were not sent yet. */
  readonly profile: string;
  /** The size as told from outside ("1280,800"); else the display is asked. */
  readonly size: string | undefined;
  /** What else it is started with. */
  readonly flags?: readonly string[];
  readonly say: (line: string) => void;
  /** Somebody closed the ordinary window, after full screen was left. */
  readonly closed: () => void;
  /** The page died so many times within a minute that it is not loaded again. */
  readonly failing: (times: number) => void;
}

/** As often in a minute a closed window is opened anew at once; after that it waits. */
const REOPENED = 5;
const WAIT_MS = 10_000;
/** As often in a minute a page that died is loaded again. */
const RELOADS = 3;
const LOOK_MS = 500;
/** How long a browser may take to end by itself. */
const ENDING_MS = 3000;

/**
 * The screens in a Chromium, full screen. A window that somebody closes, or a browser that dies, is opened anew, a page that
 * dies loaded again, and no second one opens: only `leave` makes it an ordinary one, and only that one stays closed.
 */
export class KioskWindow {
  readonly #options: BrowserWindowOptions;
  readonly #budget = new Budget(REOPENED);
  readonly #reloads = new Budget(RELOADS);
  #url = '';
  #full = true;
  #changing = false;
  #ending = false;
  #child: ChildProcess | null = null;
  #later: ReturnType<typeof setTimeout> | null = null;
  #watching: PageWatch | null = null;

  constructor(options: BrowserWindowOptions) {
    this.#options = options;
  }

  /** Shows this page full screen; nothing happens where it is shown already, in whatever window: it finds its hub again. */
  show(url: string): void {
    if (this.#url === url) return;
    this.#url = url;
    this.#full = true;
    this.#change();
  }

  /** From now on a page may die as often again. */
  renew(): void {
    this.#reloads.renew();
  }

  /** Does it show that its page could not be loaded? Only of one that is full screen. */
  async isBroken(): Promise<boolean> {
    return (await this.#watching?.isBroken().catch(() => false)) ?? false;
  }

  /** Shows the page in an ordinary window instead. */
  leave(): void {
    if (!this.#full) return;
    this.#full = false;
    this.#change();
  }

  /** Closes it for good; true when there was one, which `over` will be told of. */
  end(over: () => void): boolean {
    this.#ending = true;
    if (this.#later !== null) clearTimeout(this.#later);
    if (this.#child === null) return false;
    this.#child.once('exit', over);
    this.#close(this.#child);
    return true;
  }

  #change(): void {
    if (this.#child === null) return this.#openIn(0);
    this.#changing = true;
    this.#close(this.#child);
  }

  /** A browser with a pipe that is ended by a signal forgets the cookies of its last half minute, such as that it was paired. */
  #close(child: ChildProcess): void {
    if (this.#watching === null) return void child.kill('SIGTERM');
    this.#watching.endBrowser();
    const late = setTimeout(() => child.kill('SIGTERM'), ENDING_MS);
    child.once('exit', () => clearTimeout(late));
  }

  #openIn(milliseconds: number): void {
    if (this.#ending) return;
    if (this.#later !== null) clearTimeout(this.#later);
    this.#later = setTimeout(() => {
      // One that was left over by a program that was killed shows the screens already.
      if (profileHolder(this.#options.profile) === null) this.#open();
      else this.#openIn(LOOK_MS);
    }, milliseconds);
  }

  #open(): void {
    this.#later = null;
    const { browser, profile, size, say } = this.#options;
    const flags = this.#full ? fullFlags(this.#url, displayPlace(size)) : [this.#url];
    // Over a pipe the window is watched by who opened it and nobody else; with that one it ends.
    const [watched, pipes] = this.#full ? [['--remote-debugging-pipe'], ['pipe', 'pipe'] as const] : [[], []];
    const more = this.#options.flags ?? [];
    const child = spawn(browser, [...flags, ...watched, ...quietFlags(profile), ...more], {
      stdio: ['ignore', 'ignore', 'ignore', ...pipes],
    });
    this.#child = child;
    if (this.#full) this.#watch(child);
    child.on('error', () => {
      say(`${browser} could not be started: open ${this.#url} in a browser.`);
      this.#gone();
    });
    child.on('exit', () => this.#gone());
  }

  #watch({ stdio: [, , , to, from] }: ChildProcess): void {
    if (!(to instanceof Writable) || !(from instanceof Readable)) return;
    this.#watching = new PageWatch(new DevToolsPipe(to, from), {
      mayLoad: () => {
        const may = this.#reloads.take(Date.now());
        if (!may) this.#options.failing(RELOADS + 1);
        return may;
      },
      failed: (error) => {
        if (!this.#ending && !this.#changing)
          this.#options.say(
            `the window could not be watched: ${error instanceof Error ? error.message : String(error)}`,
          );
      },
    });
  }

  #gone(): void {
    if (this.#child === null) return;
    this.#child = null;
    this.#watching = null;
    if (this.#ending) return;
    if (this.#changing) {
      this.#changing = false;
      this.#openIn(0);
    } else if (!this.#full) this.#options.closed();
    else this.#openIn(this.#budget.take(Date.now()) ? 0 : WAIT_MS);
  }
}

/** Without a window manager nothing but these makes the window as large as the display. */
function fullFlags(url: string, place: Place | null): string[] {
  const sized =
    place === null
      ? ['--start-maximized']
      : [`--window-position=${place.x},${place.y}`, `--window-size=${place.width},${place.height}`];
  return ['--kiosk', `--app=${url}`, ...sized];
}

/** Nothing over the screens, nothing asked of the network, no gesture of the browser's own. */
function quietFlags(profile: string): string[] {
  return [
    `--user-data-dir=${profile}`,
    '--no-first-run',
    '--no-default-browser-check',
    '--hide-crash-restore-bubble',
    '--noerrdialogs',
    '--disable-features=Translate',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-pinch',
    '--overscroll-history-navigation=0',
    '--password-store=basic',
    ...(process.getuid?.() === 0 ? ['--no-sandbox', '--disable-gpu'] : []),
  ];
}
