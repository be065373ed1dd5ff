import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { buildIfStale } from './build-if-stale.mjs';

/** Runs one of the built commands: `node main/start/command.mjs plan JOB.json`. stdout carries its result alone. */
const root = join(import.meta.dirname, '..', '..');
const [name, ...rest] = process.argv.slice(2);
if (!buildIfStale(root)) process.exit(1);
const ran = spawnSync(process.execPath, [join(root, 'dist', 'hub', `${name}.js`), ...rest], {
  stdio: 'inherit',
});
process.exit(ran.status ?? 1);
