import { app, BrowserWindow, session, utilityProcess } from 'electron';
import { EventEmitter } from 'node:events';
import { join } from 'node:path';
import { answerPrintAsk, HIDDEN, printAsk } from './silent-print.ts';
import { asksToLeave, holdPage, mayUse, ReloadBudget, windowOptions } from './policy.ts';

/** The thin shell: starts the hub in a process of its own and shows its screens full screen. */
async function start(): Promise<void> {
  if (!app.requestSingleInstanceLock()) {
    app.quit();
    return;
  }
  await app.whenReady();
  const asked = new EventEmitter<{ message: [unknown] }>();
  const url = await startHub((message, answer) => {
    asked.emit('message', message);
    const print = printAsk(message);
    if (print !== null)
      answerPrintAsk(print, () => new BrowserWindow(HIDDEN)).then(answer, (error: unknown) =>
        process.stderr.write(`shoulderline: ${String(error)}\n`),
      );
  });
  session.defaultSession.setPermissionRequestHandler((page, permission, answer) =>
    answer(mayUse(permission, page.getURL(), url)),
  );
  session.defaultSession.setPermissionCheckHandler((_page, permission, origin) =>
    mayUse(permission, origin, url),
  );
  const window = new BrowserWindow(windowOptions(join(import.meta.dirname, '..', 'preload', 'preload.cjs')));
  holdPage(window.webContents, url);
  asked.on('message', (message) => {
    if (!asksToLeave(message)) return;
    window.setKiosk(false);
    window.setFullScreen(false);
  });
  const budget = new ReloadBudget();
  window.webContents.on('render-process-gone', () => {
    if (budget.take(Date.now())) window.webContents.reload();
  });
  app.on('second-instance', () => window.focus());
  await window.loadURL(url);
}

/** The hub as a utility process; resolves with its address once it says that it listens. */
function startHub(heard: (message: unknown, answer: (message: unknown) => void) => void): Promise<string> {
  return new Promise((listening, failed) => {
    const hub = utilityProcess.fork(join(import.meta.dirname, '..', 'hub', 'main.js'), ['--demo'], {
      stdio: 'pipe',
    });
    hub.on('message', (message: unknown) => heard(message, (answer) => hub.postMessage(answer)));
    let said = '';
    hub.stdout?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const url = /LISTENING (\S+)/.exec(said)?.[1];
      if (url !== undefined) listening(url);
    });
    hub.stderr?.on('data', (chunk: Buffer) => process.stderr.write(chunk));
    hub.on('exit', (code) => {
      failed(new Error(`the hub ended with code ${code}`));
      app.quit();
    });
    app.on('before-quit', () => hub.kill());
  });
}

start().catch((error: unknown) => {
  process.stderr.write(`shoulderline: ${error instanceof Error ? error.message : String(error)}\n`);
  app.exit(1);
});
