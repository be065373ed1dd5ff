import { app, BrowserWindow, utilityProcess } from 'electron';
import { EventEmitter } from 'node:events';
import { join } from 'node:path';
import { readEnvironment } from '../hub/environment.ts';
import { DEATHS, HubKeeper, type RunningHub } from '../kiosk/hub-keeper.ts';
import { type ServedPage, servePage } from '../kiosk/page-server.ts';
import { readStation } from '../kiosk/station/asked-station.ts';
import { type Stopped, stoppedPage } from '../kiosk/stopped-page.ts';
import { heldWindow, reloadDead } from './held-window.ts';
import { asksToLeave } from './policy.ts';
import { answerPrintAsk, HIDDEN, printAsk } from './silent-print.ts';
import { showStation } from './station.ts';

/** What happens to the hub and to the window, for whoever shows the screens. */
interface Happenings {
  message: [unknown];
  listens: [string];
  stopped: [string];
}

/** The thin shell: shows full screen the screens of the hub that it keeps running in a process of its own, or of another machine's. */
async function start(): Promise<void> {
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  const read = readEnvironment(process.env);
  if (!read.ok) throw new Error(read.message);
  const station = readStation([], process.env);
  if (!station.ok) throw new Error(station.message);
  await app.whenReady();
  const { data } = read.value;
  if (station.value === null) await showHub(data);
  else await showStation(data, station.value);
}

/** The screens of the hub that this keeps running. */
async function showHub(data: string): Promise<void> {
  const heard = new EventEmitter<Happenings>();
  const listening = new Promise<string>((listens) => heard.once('listens', listens));
  const keeper = keepHub(heard);
  const url = await listening;
  const { window, release } = heldWindow(url);
  heard.on('message', (message) => {
    if (!asksToLeave(message)) return;
    release();
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
    page = await servePage(stoppedPage({ ...what, data }), { again });
    await window.loadURL(page.url);
  };
  heard.on('listens', () => {
    if (page !== null) screens();
  });
  heard.on('stopped', (how) => {
    tell({ what: 'hub', times: DEATHS, how }, () => keeper.again()).catch(report);
  });
  reloadDead(window, (times, reason, renew) => {
    tell({ what: 'screen', times, how: reason }, () => {
      renew();
      screens();
    }).catch(report);
  });
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
