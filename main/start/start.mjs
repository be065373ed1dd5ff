import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { buildIfStale } from './build-if-stale.mjs';
import { findBrowser, findElectron } from './find-browser.mjs';

const root = join(import.meta.dirname, '..', '..');
const say = (line) => process.stdout.write(`${line}\n`);
const kiosk = !process.argv.includes('--hub');

if (!buildIfStale(root)) process.exit(1);

const electron = kiosk ? findElectron(root) : null;
const children = [];
let ending = false;
let window = null;
const WITHOUT_BROWSER = 'No display, or no Electron and no Chromium or Chrome, found here:';

/** Ends the children by their own ids, then this. The hub goes last, so that nothing is cut off while it writes. */
function end(code) {
  if (ending) return;
  ending = true;
  const open = children.filter((child) => child.exitCode === null && child.signalCode === null);
  if (open.length === 0) process.exit(code);
  let left = open.length;
  for (const child of open) {
    child.once('exit', () => {
      left -= 1;
      if (left === 0) process.exit(code);
    });
    child.kill('SIGTERM');
  }
  setTimeout(() => process.exit(code), 10_000).unref();
}
process.on('SIGINT', () => end(0));
process.on('SIGTERM', () => end(0));
// npm runs this under a shell that dies of a SIGTERM without passing it on: a new parent means that it is gone.
const parent = process.ppid;
setInterval(() => {
  if (process.ppid !== parent) end(0);
}, 500).unref();

if (electron !== null) {
  const shell = spawn(electron, [join(root, 'dist', 'shell', 'main.js')], { stdio: 'inherit' });
  children.push(shell);
  shell.on('exit', (code) => end(code ?? 0));
} else {
  const browser = kiosk ? kioskBrowser() : null;
  // The hub has a line to this process only where there is full screen to leave.
  const hub = spawn(process.execPath, [join(root, 'dist', 'hub', 'main.js'), ...(kiosk ? ['--demo'] : [])], {
    stdio: ['ignore', 'pipe', 'inherit', ...(browser === null ? [] : ['ipc'])],
  });
  children.push(hub);
  hub.on('message', (message) => {
    if (message?.kind === 'leave-full-screen') window?.leave();
  });
  hub.on('exit', (code) => end(code ?? 1));
  let said = '';
  hub.stdout.setEncoding('utf8');
  hub.stdout.on('data', (chunk) => {
    said += chunk;
    process.stdout.write(chunk);
    const url = /LISTENING (\S+)/.exec(said)?.[1];
    if (url === undefined || !kiosk || window !== null) return;
    said = '';
    window = browser === null ? { leave() {} } : openKiosk(browser, url);
    if (browser === null) say(`${WITHOUT_BROWSER} open ${url} in a browser.`);
  });
}

/** The browser for full screen; null where there is none, or no display to show it on. */
function kioskBrowser() {
  const display = process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  return display ? findBrowser() : null;
}

/** Shows the screens full screen; `leave` shows them in an ordinary window instead. */
function openKiosk(browser, url) {
  say(
    `Electron's program is not here, so ${browser} shows the screens full screen ("npm run get-electron" fetches it).`,
  );
  const profile = join(dataFolder(), 'kiosk');
  const size = /^\d+,\d+$/.test(process.env.SHOULDERLINE_SCREEN ?? '')
    ? process.env.SHOULDERLINE_SCREEN
    : '1920,1080';
  const quiet = [
    `--user-data-dir=${profile}`,
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-pinch',
    '--overscroll-history-navigation=0',
    '--password-store=basic',
    ...(process.getuid?.() === 0 ? ['--no-sandbox', '--disable-gpu'] : []),
  ];
  const full = ['--kiosk', `--app=${url}`, '--window-position=0,0', `--window-size=${size}`];
  let leaving = false;
  const open = (flags) => {
    const child = spawn(browser, [...flags, ...quiet], { stdio: 'ignore' });
    children.push(child);
    child.on('error', () => say(`${browser} could not be started: open ${url} in a browser.`));
    child.on('exit', () => {
      if (!leaving || ending) return end(0);
      leaving = false;
      open([url]);
    });
    return child;
  };
  const shown = open(full);
  return {
    leave() {
      if (shown.exitCode !== null || shown.signalCode !== null) return;
      leaving = true;
      shown.kill('SIGTERM');
    },
  };
}

/** The data folder, as the hub finds it. */
function dataFolder() {
  const { SHOULDERLINE_DATA, APPDATA, XDG_DATA_HOME, HOME = '' } = process.env;
  if (SHOULDERLINE_DATA) return SHOULDERLINE_DATA;
  if (process.platform === 'win32') return join(APPDATA ?? HOME, 'Shoulderline');
  if (process.platform === 'darwin') return join(HOME, 'Library', 'Application Support', 'Shoulderline');
  return join(XDG_DATA_HOME ?? join(HOME, '.local', 'share'), 'shoulderline');
}
