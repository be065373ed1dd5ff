import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** An installed Chromium or Chrome: $CHROMIUM, then the search path, then the usual places. Null when there is none. */
export function findBrowser(env = process.env) {
  if (env.CHROMIUM) return existsSync(env.CHROMIUM) ? env.CHROMIUM : null;
  const onPath = (env.PATH ?? '')
    .split(delimiter)
    .flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...onPath, ...PLACES].find((path) => existsSync(path)) ?? null;
}

/** Electron's program, when its binary has been fetched; looked for without running any of its code. */
export function findElectron(root, env = process.env) {
  try {
    const folder = dirname(createRequire(join(root, 'package.json')).resolve('electron/package.json'));
    const named = join(folder, 'path.txt');
    if (!existsSync(named)) return null;
    const program = join(
      env.ELECTRON_OVERRIDE_DIST_PATH ?? join(folder, 'dist'),
      readFileSync(named, 'utf8').trim(),
    );
    return existsSync(program) ? program : null;
  } catch {
    return null;
  }
}
