import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * Breaks a copy of the tree in one place after the other, each as somebody might by a slip, and says what notices it: the
 * compiler, or the test that is named. What nobody notices is a fault of ours.
 */
const root = join(import.meta.dirname, '..');
const MUTATIONS = [
  {
    slip: 'a misspelt setting in the drawing of the bead',
    file: 'core/views/router-table-setups.ts',
    from: 'drawn(s.fillet)',
    to: 'drawn(s.filet)',
  },
  {
    slip: 'a misspelt shoulder line in the drawing of a stile’s mitre',
    file: 'core/views/mitre-setups.ts',
    from: 'drawn(settings.shoulderLine)',
    to: 'drawn(settings.shoulderline)',
  },
  {
    slip: 'cheeks without their drawing',
    file: 'core/views/stage-views.ts',
    from: '  cheek: cheekSetup,\n',
    to: '',
  },
  {
    slip: 'a new stage without a drawing',
    file: 'core/stages/table.ts',
    from: '  haunch,\n  cutout,',
    to: "  haunch,\n  drill: { title: 'stage.haunch', station: 'bench', of: 'part', settings: { depth: { is: 'length' } } },\n  cutout,",
  },
  {
    slip: 'a new stage without a title',
    file: 'core/stages/tenon.ts',
    from: "title: 'stage.haunch'",
    to: "title: 'stage.drill'",
  },
  {
    slip: 'a misspelt word for what is left to pare of a strip',
    file: 'core/stages/strip.ts',
    from: "pared: 'fence'",
    to: "pared: 'fense'",
  },
  {
    slip: 'a strip that leaves nothing to pare where it stops',
    file: 'core/stages/strip.ts',
    from: "{ is: 'length', pared: 'stop', rounds: 'down', gates: 'line' }",
    to: "{ is: 'length', rounds: 'down', gates: 'line' }",
    test: 'test/core/plan/left-to-pare.test.ts',
  },
  {
    slip: 'a misspelt word for a length that a test piece does not prove',
    file: 'core/stages/mill.ts',
    from: 'unproved: true',
    to: 'unprooved: true',
  },
  {
    slip: 'the raised panel’s band under another name',
    file: 'core/joint/panel.ts',
    from: 'band: exact(',
    to: 'bevel: exact(',
  },
  {
    slip: 'a mortise whose draft lacks the fence',
    file: 'core/joint/mortise.ts',
    from: '      fence: chisel === null ? undefined : fence(spec.thickness, chisel),\n',
    to: '',
  },
  {
    slip: 'a length that is set and not dimensioned',
    file: 'core/views/groove-setup.ts',
    from: "dimension('depth', s.depth,",
    to: "dimension('deep', s.depth,",
    test: 'test/core/views/held-to-plan.test.ts',
  },
];

function run(file, cwd, ...args) {
  const command = join(root, 'node_modules', file);
  return spawnSync(process.execPath, [command, ...args], { cwd, encoding: 'utf8' });
}

/** What notices the slip: the first line of the compiler, the test; null when nothing does. */
function noticedBy(copy, { test }) {
  const types = run('typescript/bin/tsc', copy, '-p', 'core/tsconfig.json', '--noEmit');
  if (types.status !== 0) return `types: ${types.stdout.split('\n')[0] ?? ''}`;
  if (test === undefined) return null;
  const ran = run('vitest/vitest.mjs', copy, 'run', '--project', 'node', test);
  return ran.status === 0 ? null : `test: ${test}`;
}

const copy = mkdtempSync(join(tmpdir(), 'mutations-'));
try {
  for (const each of [
    'core',
    'labels',
    'main',
    'ui',
    'test',
    'package.json',
    'vite.config.ts',
    'tsconfig.base.json',
    'tsconfig.json',
  ])
    cpSync(join(root, each), join(copy, each), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
  const tests = MUTATIONS.flatMap(({ test }) => (test === undefined ? [] : [test]));
  const whole = run('vitest/vitest.mjs', copy, 'run', '--project', 'node', ...tests);
  if (whole.status !== 0) throw new Error(`the copy is not sound before it is broken:\n${whole.stdout}`);
  let unnoticed = 0;
  const say = (text) => process.stdout.write(`${text}\n`);
  for (const mutation of MUTATIONS) {
    const { slip, file, from, to } = mutation;
    const path = join(copy, file);
    const text = readFileSync(path, 'utf8');
    if (text.split(from).length !== 2) {
      say(`cannot be made: ${slip} (${file} has not just one ${JSON.stringify(from)})`);
      unnoticed += 1;
      continue;
    }
    writeFileSync(path, text.replace(from, to));
    const noticed = noticedBy(copy, mutation);
    writeFileSync(path, text);
    say(noticed === null ? `NOT NOTICED: ${slip}` : `noticed: ${slip}\n  ${noticed}`);
    if (noticed === null) unnoticed += 1;
  }
  say(`mutations: ${MUTATIONS.length - unnoticed} of ${MUTATIONS.length} noticed`);
  process.exitCode = unnoticed === 0 ? 0 : 1;
} finally {
  rmSync(copy, { recursive: true, force: true });
}
