import { app, BrowserWindow, session } from 'electron';
import { join } from 'node:path';
import { Budget } from '../kiosk/budget.ts';
import { holdPage, mayUse, RELOADS, windowOptions } from './policy.ts';

/** The one window, which shows these screens, goes nowhere else, and cannot be closed before it is released. */
export function heldWindow(url: string): { readonly window: BrowserWindow; readonly release: () => void } {
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
  const release = () => (held = false);
  app.on('before-quit', release);
  app.on('second-instance', () => window.focus());
  return { window, release };
}

/** Loads a page again that has died, as often in a minute as it may; then tells how often, how, and what lets it die as often again. */
export function reloadDead(
  window: BrowserWindow,
  failing: (times: number, reason: string, renew: () => void) => void,
): void {
  const budget = new Budget(RELOADS);
  window.webContents.on('render-process-gone', (_event, { reason }) => {
    if (budget.take(Date.now())) window.webContents.reload();
    else failing(RELOADS + 1, reason, () => budget.renew());
  });
}
