import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

/** Records what this version of the program prints and folds, after its number was raised. */
const root = join(import.meta.dirname, '..');
const { status } = spawnSync(
  process.execPath,
  [
    join(root, 'node_modules', 'vitest', 'vitest.mjs'),
    'run',
    '--project',
    'node',
    'test/core/versions/fingerprint.test.ts',
  ],
  { cwd: root, stdio: 'inherit', env: { ...process.env, RECORD_PLANS: '1' } },
);
process.exit(status ?? 1);
