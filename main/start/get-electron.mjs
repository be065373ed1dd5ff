import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

/** Fetches Electron's program, for full screens without a browser. The only thing here that downloads. */
const folder = dirname(createRequire(import.meta.url).resolve('electron/package.json'));
const ran = spawnSync(process.execPath, [join(folder, 'install.js')], { stdio: 'inherit' });
process.exit(ran.status ?? 1);
