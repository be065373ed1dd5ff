import { app, BrowserWindow, session, utilityProcess } from 'electron';
import { EventEmitter } from 'node:events';
import { join } from 'node:path';
import { readEnvironment } from '../hub/environment.ts';
import { Budget } from '../kiosk/budget.ts';
import { DEATHS, HubKeeper, type RunningHub } from '../kiosk/hub-keeper.ts';
import { type ServedPage, servePage } from '../kiosk/page-server.ts';
import { type Stopped, stoppedPage } from '../kiosk/stopped-page.ts';
import { asksToLeave, holdPage, mayUse, RELOADS, windowOptions } from './policy.ts';
import { answerPrintAsk, HIDDEN, printAsk } from './silent-print.ts';

/** What happens to the hub and to the window, for whoever shows the screens. */
interface Happenings {
  message: [unknown];
  listens: [string];
  stopped: [string];
}

/** The thin shell: keeps the hub running in a process of its own and shows its screens full screen. */
async function start(): Promise<void> {
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  const read = readEnvironment(process.env);
  if (!read.ok) throw new Error(read.message);
  await app.whenReady();
  const heard = new EventEmitter<Happenings>();
  const listening = new Promise<string>((listens) => heard.once('listens', listens));
  const keeper = keepHub(heard);
  const url = await listening;
  session.defaultSession.setPermissionRequestHandler((page, permission, answer) =>
    answer(mayUse(permission, page.getURL(), url)),
  );
  session.defaultSession.setPermissionCheckHandler((_page, permission, origin) =>
    mayUse(permission, origin, url),
  );
  const window = new BrowserWindow(windowOptions(join(import.meta.dirname, '..', 'preload', 'preload.cjs')));
  holdPage(window.webContents, url);
  let held = true;
  window.on('close', (event) => {
    if (held) event.preventDefault();
  });
  app.on('before-quit', () => (held = false));
  heard.on('message', (message) => {
    if (!asksToLeave(message)) return;
    held = false;
    window.setKiosk(false);
    window.setFullScreen(false);
  });
  let page: ServedPage | null = null;
  const screens = () => {
    page?.close();
    page = null;
    void window.loadURL(url).catch(report);
  };
  const tell = async (what: Omit<Stopped, 'data'>, again: () => void) => {
    page?.close();
    page = await servePage(stoppedPage({ ...what, data: read.value.data }), again);
    await window.loadURL(page.url);
  };
  heard.on('listens', () => {
    if (page !== null) screens();
  });
  heard.on('stopped', (how) => {
    tell({ what: 'hub', times: DEATHS, how }, () => keeper.again()).catch(report);
  });
  const budget = new Budget(RELOADS);
  window.webContents.on('render-process-gone', (_event, { reason }) => {
    if (budget.take(Date.now())) window.webContents.reload();
    else
      tell({ what: 'screen', times: RELOADS + 1, how: reason }, () => {
        budget.renew();
        screens();
      }).catch(report);
  });
  app.on('second-instance', () => window.focus());
  await window.loadURL(url);
}

/** Keeps the hub running as a utility process. What it asks about printing is answered here. */
function keepHub(heard: EventEmitter<Happenings>): HubKeeper {
  const keeper = new HubKeeper({
    start: (port) => forkHub(port, heard),
    listens: (url) => heard.emit('listens', url),
    neverListened: (how) => {
      report(new Error(`the hub ended (${how}) before it listened`));
      app.exit(1);
    },
    stopped: (how) => heard.emit('stopped', how),
  });
  app.on('before-quit', () => keeper.end(() => undefined));
  return keeper;
}

function forkHub(port: string | null, heard: EventEmitter<Happenings>): RunningHub {
  const hub = utilityProcess.fork(join(import.meta.dirname, '..', 'hub', 'main.js'), ['--demo'], {
    stdio: 'pipe',
    env: port === null ? process.env : { ...process.env, SHOULDERLINE_PORT: port },
  });
  hub.on('message', (message: unknown) => {
    heard.emit('message', message);
    const print = printAsk(message);
    if (print !== null)
      answerPrintAsk(print, () => new BrowserWindow(HIDDEN)).then(
        (answer) => hub.postMessage(answer),
        report,
      );
  });
  hub.stderr?.on('data', (chunk: Buffer) => process.stderr.write(chunk));
  return {
    hear: (listen) => void hub.stdout?.on('data', (chunk: Buffer) => listen(chunk.toString())),
    ended: (listen) => void hub.once('exit', (code) => listen(`code ${code}`)),
    end: () => void hub.kill(),
  };
}

function report(error: unknown): void {
  process.stderr.write(`shoulderline: ${error instanceof Error ? error.message : String(error)}\n`);
}

start().catch((error: unknown) => {
  report(error);
  app.exit(1);
});
