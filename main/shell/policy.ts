import type { BrowserWindowConstructorOptions, Event, WebContents } from 'electron';

/** How the one window is made: full screen, nothing of Node in the page, no way out of it. */
export function windowOptions(preload: string): BrowserWindowConstructorOptions {
  return {
    kiosk: true,
    fullscreen: true,
    autoHideMenuBar: true,
    backgroundColor: '#ffffff',
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      webSecurity: true,
      devTools: false,
      spellcheck: false,
    },
  };
}

/** May the page go to this address? Only to the hub's own. */
export function mayNavigate(address: string, hub: string): boolean {
  try {
    return new URL(address).origin === new URL(hub).origin;
  } catch {
    return false;
  }
}

/** May a page use this? Only the hub's own page, and only the camera, to scan with. */
export function mayUse(permission: string, page: string, hub: string): boolean {
  return permission === 'media' && mayNavigate(page, hub);
}

/** Refuses every navigation off the hub, every new window, and every embedded view. */
export function holdPage(page: Pick<WebContents, 'on' | 'setWindowOpenHandler'>, hub: string): void {
  const refuse = (event: Event, address: string) => {
    if (!mayNavigate(address, hub)) event.preventDefault();
  };
  page.on('will-navigate', (event, address) => refuse(event, address));
  page.on('will-redirect', (event, address) => refuse(event, address));
  page.on('will-attach-webview', (event) => event.preventDefault());
  page.setWindowOpenHandler(() => ({ action: 'deny' }));
}

/** Does the hub ask to leave full screen? It asks only for somebody who may. */
export function asksToLeave(message: unknown): boolean {
  return (
    typeof message === 'object' &&
    message !== null &&
    'kind' in message &&
    message.kind === 'leave-full-screen'
  );
}

/** How often a page that died may be loaded again: three times in a minute, then it stays with a note. */
export class ReloadBudget {
  #times: number[] = [];

  /** May it be loaded again at this time (milliseconds)? Counts it if so. */
  take(now: number): boolean {
    this.#times = this.#times.filter((time) => now - time < 60_000);
    if (this.#times.length >= 3) return false;
    this.#times.push(now);
    return true;
  }
}
