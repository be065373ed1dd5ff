import { app, session } from 'electron';
import type { AskedStation } from '../kiosk/station/asked-station.ts';
import { KeptTrust } from '../kiosk/station/kept-trust.ts';
import { machineLanguage } from '../kiosk/station/machine-language.ts';
import { StationKeeper } from '../kiosk/station/station-keeper.ts';
import { disk } from '../store/files/disk.ts';
import { heldWindow, reloadDead } from './held-window.ts';
import { GOOD, judgeCertificate } from './policy.ts';

/** The screens of another machine's hub, by the key that somebody has compared. */
export async function showStation(data: string, asked: AskedStation): Promise<void> {
  const kept = await KeptTrust.open(disk, data);
  const { window } = heldWindow(asked.url);
  let shown = '';
  let broken = false;
  window.webContents.on('did-fail-load', (_event, _code, _what, url, isMainFrame) => {
    if (isMainFrame && shown === asked.url && url.startsWith(asked.url)) broken = true;
  });
  const keeper = new StationKeeper({
    asked,
    kept,
    window: {
      show(url) {
        if (shown === url) return;
        shown = url;
        broken = false;
        // What could not be loaded is told by its own event.
        window.loadURL(url).catch(() => undefined);
      },
      isBroken: () => Promise.resolve(broken),
    },
    trusted: (authority) =>
      session.defaultSession.setCertificateVerifyProc((request, judged) => {
        const verdict = judgeCertificate(request, asked.url, authority, Date.now());
        judged(verdict);
        if (verdict !== GOOD) keeper.failed('other');
      }),
    say: (line) => process.stdout.write(`shoulderline: ${line}\n`),
    language: machineLanguage(),
  });
  app.on('before-quit', () => keeper.end());
  reloadDead(window, (times, _reason, renew) => keeper.failing(times, renew));
  await keeper.start();
}
