import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

/** Types of every zone, each by its own rules: tsc for TypeScript, svelte-check for the screens. */
const root = join(import.meta.dirname, '..');
const bin = (name, file) => join(root, 'node_modules', name, file);
const runs = [
  ...['core', 'labels', 'main', 'test'].map((zone) => [bin('typescript', 'bin/tsc'), '-p', zone]),
  [bin('svelte-check', 'bin/svelte-check'), '--tsconfig', 'ui/tsconfig.json', '--fail-on-warnings'],
];
let passed = 0;
for (const run of runs)
  if (spawnSync(process.execPath, run, { cwd: root, stdio: 'inherit' }).status === 0) passed += 1;
process.stdout.write(`types: ${passed} of ${runs.length} zones\n`);
process.exit(passed === runs.length ? 0 : 1);
