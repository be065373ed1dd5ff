import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { buildIfStale } from '../main/start/build-if-stale.mjs';

/** The long proofs in full: those of arithmetic, papers and disk, then those in a browser. What is given narrows down both. */
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

const proved = run('vitest/vitest.mjs', 'run', '--project', 'proof', '--passWithNoTests');
const shown =
  buildIfStale(root) &&
  run('@playwright/test/cli.js', 'test', '--config', 'playwright.proof.config.ts', '--pass-with-no-tests');
const minutes = ((Date.now() - began) / 60_000).toFixed(1);
process.stdout.write(`proofs: ${proved && shown ? 'green' : 'red'} after ${minutes} minutes\n`);
process.exit(proved && shown ? 0 : 1);
