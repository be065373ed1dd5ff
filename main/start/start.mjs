import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildIfStale } from './build-if-stale.mjs';
import { findBrowser, findElectron } from './find-browser.mjs';
import { showStation } from './station.mjs';

const root = join(import.meta.dirname, '..', '..');
const say = (line) => process.stdout.write(`${line}\n`);
const kiosk = !process.argv.includes('--hub');

if (!buildIfStale(root)) process.exit(1);

const built = await import(pathToFileURL(join(root, 'dist', 'shell', 'kiosk.js')).href);
const { ok, message, value: station } = built.readStation(process.argv.slice(2), process.env);
if (!ok) {
  process.stderr.write(`shoulderline: ${message}\n`);
  process.exit(2);
}
const electron = kiosk ? findElectron(root) : null;
/** What is to be ended with this; each tells when it is, or that there is nothing to end. */
const running = [];
let ending = false;
const WITHOUT_BROWSER = 'No display, or no Electron and no Chromium or Chrome, found here:';

/** Ends what runs, each by its own id, then this. */
function end(code) {
  if (ending) return;
  ending = true;
  let left = running.length;
  const over = () => {
    left -= 1;
    if (left === 0) process.exit(code);
  };
  for (const each of [...running]) if (!each.end(over)) over();
  if (running.length === 0) process.exit(code);
  setTimeout(() => process.exit(code), 10_000).unref();
}
process.on('SIGINT', () => end(0));
process.on('SIGTERM', () => end(0));
// Where the display ends, or the terminal is closed.
process.on('SIGHUP', () => end(0));
// npm runs this under a shell that dies of a SIGTERM without passing it on: a new parent means that it is gone.
const parent = process.ppid;
setInterval(() => {
  if (process.ppid !== parent) end(0);
}, 500).unref();

if (electron !== null) {
  const shell = spawn(electron, [join(root, 'dist', 'shell', 'main.js')], {
    stdio: 'inherit',
    env: {
      ...process.env,
      SHOULDERLINE_STATION: station?.url ?? '',
      SHOULDERLINE_FINGERPRINT: station?.fingerprint ?? '',
    },
  });
  running.push({ end: (over) => shell.once('exit', over).kill('SIGTERM') });
  shell.on('exit', (code) => end(code ?? 0));
} else if (station !== null) await keepStation(kioskBrowser());
else if (kiosk) await keepKiosk(kioskBrowser());
else {
  const hub = startHub(null, []);
  hub.stdout.pipe(process.stdout);
  running.push({ end: (over) => hub.once('exit', over).kill('SIGTERM') });
  hub.on('exit', (code) => end(code ?? 1));
}

/** Shows the screens of another machine's hub, and runs none. */
async function keepStation(browser) {
  const data = dataFolder();
  if (data === null) return end(1);
  if (browser === null) {
    process.stderr.write(`${WITHOUT_BROWSER} a station needs both\n`);
    return end(1);
  }
  try {
    const size = process.env.SHOULDERLINE_SCREEN;
    const closed = () => end(0);
    running.push(await showStation({ kiosk: built, asked: station, data, browser, size, say, closed }));
  } catch (error) {
    process.stderr.write(`shoulderline: ${error instanceof Error ? error.message : String(error)}\n`);
    end(1);
  }
}

/** Where this machine keeps what is its own; null, and said, where that cannot be read. */
function dataFolder() {
  const read = built.readEnvironment(process.env);
  if (read.ok) return read.value.data;
  process.stderr.write(`shoulderline: ${read.message}\n`);
  return null;
}

/** The hub as a process; on the port that it had where it is started anew. */
function startHub(port, channel) {
  return spawn(process.execPath, [join(root, 'dist', 'hub', 'main.js'), ...(kiosk ? ['--demo'] : [])], {
    stdio: ['ignore', 'pipe', 'inherit', ...channel],
    env: port === null ? process.env : { ...process.env, SHOULDERLINE_PORT: port },
  });
}

/** Keeps the hub running and its screens in a full screen of this browser's; with none, the hub alone. */
async function keepKiosk(browser) {
  const { DEATHS, HubKeeper, KioskWindow, servePage, stoppedPage } = built;
  const data = dataFolder();
  if (data === null) return end(1);
  const window =
    browser === null
      ? null
      : new KioskWindow({
          browser,
          profile: join(data, 'kiosk'),
          size: process.env.SHOULDERLINE_SCREEN,
          say,
          closed: () => end(0),
          failing: (times) =>
            void tell({ what: 'screen', times, how: 'crashed' }, () => {
              page?.close();
              page = null;
              window.renew();
              window.show(screens);
            }),
        });
  let told = false;
  let page = null;
  /** Where the hub's screens are. */
  let screens = '';
  /** Shows a page that says what has stopped, until somebody asks there for another try. */
  async function tell(what, again) {
    page?.close();
    page = await servePage(stoppedPage({ ...what, data }), { again });
    window.show(page.url);
  }
  const keeper = new HubKeeper({
    start(port) {
      // The hub has a line to this process only where there is full screen to leave.
      const hub = startHub(port, window === null ? [] : ['ipc']);
      hub.stdout.setEncoding('utf8');
      hub.on('message', (message) => {
        if (message?.kind === 'leave-full-screen') window?.leave();
      });
      return {
        hear: (listen) =>
          hub.stdout.on('data', (text) => {
            process.stdout.write(text);
            listen(text);
          }),
        ended: (listen) => hub.once('exit', (code, signal) => listen(signal ?? `code ${code}`)),
        end: () => hub.kill('SIGTERM'),
      };
    },
    listens(url) {
      if (!told && window !== null)
        say(
          `Electron's program is not here, so ${browser} shows the screens full screen ("npm run get-electron" fetches it).`,
        );
      if (!told && window === null) say(`${WITHOUT_BROWSER} open ${url} in a browser.`);
      told = true;
      page?.close();
      page = null;
      screens = url;
      window?.show(url);
    },
    neverListened: (how) => end(/^code (\d+)$/.exec(how) === null ? 1 : Number(how.slice(5))),
    async stopped(how) {
      process.stderr.write(
        `shoulderline: the hub died ${DEATHS} times in a minute and stays ended (${how})\n`,
      );
      if (window === null) return end(1);
      await tell({ what: 'hub', times: DEATHS, how }, () => keeper.again());
    },
  });
  if (window !== null) running.push(window);
  running.push(keeper);
}

/** The browser for full screen; null where there is none, or no display to show it on. */
function kioskBrowser() {
  const display = process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  return display ? findBrowser() : null;
}
