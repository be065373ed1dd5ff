import { join } from 'node:path';

/**
 * Shows another machine's screens in a full screen of this browser's, by the key that somebody has compared; gives what is
 * to be ended with the program.
 */
export async function showStation({ kiosk, asked, data, browser, size, say, closed }) {
  const { disk, KeptTrust, KioskWindow, machineLanguage, openBridge, StationKeeper } = kiosk;
  const kept = await KeptTrust.open(disk, data);
  let keeper = null;
  const bridge = await openBridge(asked.url, (why) => keeper?.failed(why));
  const window = new KioskWindow({
    browser,
    profile: join(data, 'kiosk'),
    size,
    flags: bridge.flags,
    say,
    closed,
    failing: (times) => keeper?.failing(times, () => window.renew()),
  });
  keeper = new StationKeeper({
    asked,
    kept,
    window,
    trusted: (authority) => bridge.trust(authority),
    say: (line) => say(`shoulderline: ${line}`),
    language: machineLanguage(),
  });
  say(`STATION ${asked.url}`);
  await keeper.start();
  return {
    end(over) {
      keeper.end();
      bridge.close();
      return window.end(over);
    },
  };
}
