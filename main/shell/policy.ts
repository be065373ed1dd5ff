import { isIP } from 'node:net';
import { X509Certificate } from 'node:crypto';
import type { BrowserWindowConstructorOptions, Event, Request, WebContents } from 'electron';

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

/** What the window is told of a certificate: that it is good, or not. */
export const GOOD = 0;
const NOT_GOOD = -2;

/**
 * Is what was shown for a host good? Only for the station's hub itself, if the shop's authority has signed it, for this host
 * and this day. What the machine itself trusts does not count: the window goes nowhere else.
 */
export function judgeCertificate(
  { hostname, certificate }: Pick<Request, 'hostname'> & { readonly certificate: { readonly data: string } },
  hub: string,
  authority: string | null,
  now: number,
): number {
  if (authority === null || hostname !== new URL(hub).hostname) return NOT_GOOD;
  try {
    const [leaf, shop] = [new X509Certificate(certificate.data), new X509Certificate(authority)];
    const stands = Date.parse(leaf.validFrom) <= now && now <= Date.parse(leaf.validTo);
    const named = isIP(hostname) === 0 ? leaf.checkHost(hostname) : leaf.checkIP(hostname);
    const signed = leaf.checkIssued(shop) && leaf.verify(shop.publicKey);
    return stands && signed && named !== undefined ? GOOD : NOT_GOOD;
  } catch {
    return NOT_GOOD;
  }
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

/** So often within a minute is a page that died loaded again; then it is told that the screen keeps failing. */
export const RELOADS = 3;
