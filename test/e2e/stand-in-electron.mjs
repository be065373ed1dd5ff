import { spawn } from 'node:child_process';
import { EventEmitter } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { findBrowser } from '../../main/start/find-browser.mjs';

/**
 * As much of Electron as the shell uses. Its one window is a real Chromium, driven by the DevTools protocol over a pipe:
 * what the shell's policy refuses is a real navigation, a real new window and a real question for a permission; what it
 * loads again has really crashed. It tells on standard output, and is told on standard input, a line of JSON each.
 */
const tell = (line) => process.stdout.write(`STAND-IN ${line}\n`);

class App extends EventEmitter {
  requestSingleInstanceLock() {
    return true;
  }
  /** Late, so that a shell that waits for it at the top of its module hangs. */
  whenReady() {
    return new Promise((ready) => setTimeout(ready, 300));
  }
  quit() {
    this.emit('before-quit');
    BrowserWindow.shown?.destroy();
    setTimeout(() => process.exit(0), 500);
  }
  exit(code) {
    BrowserWindow.shown?.destroy();
    process.exit(code);
  }
}
export const app = new App();

const asked = { request: null, check: null };
export const session = {
  defaultSession: {
    setPermissionRequestHandler: (handler) => (asked.request = handler),
    setPermissionCheckHandler: (handler) => (asked.check = handler),
  },
};

export const utilityProcess = {
  fork(path, args, { env }) {
    const child = spawn(process.execPath, [path, ...args], { stdio: ['ignore', 'pipe', 'pipe', 'ipc'], env });
    tell(`hub ${child.pid}`);
    child.stdout.on('data', (chunk) => /LISTENING/.test(chunk) && tell(`hub-listens ${child.pid}`));
    return Object.assign(child, { postMessage: (message) => child.send(message) });
  },
};

/** Commands of the DevTools protocol over Chromium's pipe, answered in any order; whatever happens is emitted. */
class Protocol extends EventEmitter {
  #next = 0;
  #waiting = new Map();
  #write;

  constructor(child) {
    super();
    this.#write = child.stdio[3];
    let rest = '';
    child.stdio[4].setEncoding('utf8');
    child.stdio[4].on('data', (text) => {
      const whole = (rest + text).split('\0');
      rest = whole.pop();
      for (const message of whole) this.#take(JSON.parse(message));
    });
  }

  #take({ id, method, params, result, error }) {
    if (id === undefined) return this.emit(method, params);
    const { done, failed } = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (error === undefined) done(result);
    else failed(new Error(error.message));
  }

  send(method, params = {}, sessionId) {
    this.#next += 1;
    const id = this.#next;
    return new Promise((done, failed) => {
      this.#waiting.set(id, { done, failed });
      this.#write.write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
    });
  }
}

/** What Electron calls a permission, and what Chromium does. */
const PERMISSIONS = {
  media: ['camera', 'microphone'],
  geolocation: ['geolocation'],
  notifications: ['notifications'],
  midi: ['midi'],
  'clipboard-read': ['clipboard-read'],
};

export class BrowserWindow extends EventEmitter {
  static shown = null;
  #profile = mkdtempSync(join(tmpdir(), 'shoulderline-stand-in-'));
  #child;
  #protocol;
  #ready;
  #session;
  #page;
  #own = null;
  #crashed = false;
  #openHandler = null;

  constructor(options) {
    super();
    tell(`window ${JSON.stringify(options)}`);
    BrowserWindow.shown = this;
    this.webContents = Object.assign(new EventEmitter(), {
      setWindowOpenHandler: (handler) => (this.#openHandler = handler),
      reload: () => {
        tell('reload');
        void this.#reload();
      },
    });
    const flags = [
      '--headless',
      '--remote-debugging-pipe',
      `--user-data-dir=${this.#profile}`,
      '--no-first-run',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--use-fake-device-for-media-stream',
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      'about:blank',
    ];
    this.#child = spawn(findBrowser(), flags, { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] });
    this.#child.stdio[3].on('error', () => undefined);
    process.once('exit', () => rmSync(this.#profile, { recursive: true, force: true, maxRetries: 5 }));
    this.#protocol = new Protocol(this.#child);
    this.#ready = this.#attach();
  }

  async #attach() {
    const protocol = this.#protocol;
    await protocol.send('Target.setDiscoverTargets', { discover: true });
    const { targetInfos } = await protocol.send('Target.getTargets');
    this.#page = targetInfos.find(({ type }) => type === 'page').targetId;
    protocol.on('Fetch.requestPaused', (paused) => void this.#judge(paused));
    protocol.on('Target.targetCreated', ({ targetInfo }) => this.#opened(targetInfo));
    protocol.on('Target.targetCrashed', () => {
      tell('crashed');
      this.#crashed = true;
      this.webContents.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 1 });
    });
    const options = { targetId: this.#page, flatten: true };
    ({ sessionId: this.#session } = await protocol.send('Target.attachToTarget', options));
    await this.#enable();
  }

  async #enable() {
    const protocol = this.#protocol;
    for (const domain of ['Page', 'Runtime', 'Inspector'])
      await protocol.send(`${domain}.enable`, {}, this.#session);
    await protocol.send(
      'Fetch.enable',
      { patterns: [{ resourceType: 'Document', requestStage: 'Request' }] },
      this.#session,
    );
  }

  /** A navigation that the page itself asks for is judged by the shell, before anything of it is fetched. */
  async #judge({ requestId, request, redirectedRequestId }) {
    let refused = false;
    if (request.url !== this.#own) {
      const event = { preventDefault: () => (refused = true) };
      this.webContents.emit(
        redirectedRequestId === undefined ? 'will-navigate' : 'will-redirect',
        event,
        request.url,
      );
      tell(`navigation ${refused ? 'refused' : 'allowed'} ${request.url}`);
    }
    if (!refused) await this.#permit(new URL(request.url).origin, request.url);
    const [command, more] = refused
      ? ['Fetch.failRequest', { errorReason: 'Aborted' }]
      : ['Fetch.continueRequest', {}];
    await this.#protocol.send(command, { requestId, ...more }, this.#session);
  }

  /** Chromium asks at the moment; here it is told beforehand what the shell answers for this page. */
  async #permit(origin, url) {
    for (const [permission, names] of Object.entries(PERMISSIONS)) {
      const given = await new Promise((answer) => asked.request({ getURL: () => url }, permission, answer));
      const setting = given && asked.check(null, permission, origin) ? 'granted' : 'denied';
      for (const name of names)
        await this.#protocol.send('Browser.setPermission', { permission: { name }, setting, origin });
    }
  }

  #opened({ type, targetId, openerId, url }) {
    if (type !== 'page' || openerId === undefined) return;
    const { action } = this.#openHandler({ url });
    tell(`opened ${action} ${url}`);
    if (action === 'deny') void this.#protocol.send('Target.closeTarget', { targetId });
  }

  async send(method, params) {
    await this.#ready;
    // The session of a page that died answers nothing more.
    if (this.#crashed && method === 'Page.navigate') {
      this.#crashed = false;
      await this.#protocol.send('Target.detachFromTarget', { sessionId: this.#session });
      this.#session = (
        await this.#protocol.send('Target.attachToTarget', { targetId: this.#page, flatten: true })
      ).sessionId;
      const navigated = this.#protocol.send(method, params, this.#session);
      await this.#enable();
      return navigated;
    }
    return this.#protocol.send(method, params, this.#session);
  }

  /** The protocol's own reload waits for the page that has crashed: its address is gone to again. */
  async #reload() {
    const { targetInfo } = await this.#protocol.send('Target.getTargetInfo', { targetId: this.#page });
    this.#own = targetInfo.url;
    await this.send('Page.navigate', { url: targetInfo.url });
  }

  async targets() {
    const { targetInfos } = await this.#protocol.send('Target.getTargets');
    return targetInfos.filter(({ type }) => type === 'page').map(({ url }) => url);
  }

  async loadURL(url) {
    this.#own = url.endsWith('/') ? url : `${url}/`;
    await this.send('Page.navigate', { url });
    tell(`loaded ${url}`);
  }

  /** As a window manager closes it. */
  close() {
    let held = false;
    this.emit('close', { preventDefault: () => (held = true) });
    tell(held ? 'close held' : 'closed');
    if (!held) app.quit();
  }

  setKiosk(on) {
    tell(`kiosk ${on}`);
  }
  setFullScreen(on) {
    tell(`full-screen ${on}`);
  }
  focus() {
    tell('focus');
  }
  destroy() {
    this.#child.kill('SIGKILL');
  }
}
export const contextBridge = { exposeInMainWorld() {} };

/** What the test asks of the window, each with a number that its answer carries. */
const COMMANDS = {
  send: ({ method, params }) => BrowserWindow.shown.send(method, params),
  targets: () => BrowserWindow.shown.targets(),
  close: () => BrowserWindow.shown.close(),
  second: () => app.emit('second-instance'),
  quit: () => app.quit(),
};
createInterface({ input: process.stdin }).on('line', (line) => {
  const { id, command, ...more } = JSON.parse(line);
  Promise.resolve(COMMANDS[command](more)).then(
    (result) => tell(`answer ${JSON.stringify({ id, result: result ?? null })}`),
    (error) => tell(`answer ${JSON.stringify({ id, error: error.message })}`),
  );
});
