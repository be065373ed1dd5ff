import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { buildIfStale } from '../main/start/build-if-stale.mjs';

/** The long proofs in full: that slips are noticed; those of arithmetic, papers and disk; those in a browser. What is given narrows down the last two, and leaves the first out. */
const root = join(import.meta.dirname, '..');
const given = process.argv.slice(2);
const began = Date.now();

function run(file, ...args) {
  const { status } = spawnSync(process.execPath, [join(root, 'node_modules', file), ...args, ...given], {
    cwd: root,
    stdio: 'inherit',
  });
  return status === 0;
}

const noticed =
  given.length > 0 ||
  spawnSync(process.execPath, [join(root, 'test/mutations.mjs')], { cwd: root, stdio: 'inherit' }).status ===
    0;
const proved = run('vitest/vitest.mjs', 'run', '--project', 'proof', '--passWithNoTests');
const shown =
  buildIfStale(root) &&
  run('@playwright/test/cli.js', 'test', '--config', 'playwright.proof.config.ts', '--pass-with-no-tests');
const green = noticed && proved && shown;
const minutes = ((Date.now() - began) / 60_000).toFixed(1);
process.stdout.write(`proofs: ${green ? 'green' : 'red'} after ${minutes} minutes\n`);
process.exit(green ? 0 : 1);
