import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { findBrowser } from '../main/start/find-browser.mjs';

/**
 * Everything that must be green: format, lint, types, unit tests, build, browser tests. Each check without tests of its
 * own counts as one. The last line sums all runners: "N passed, N failed". `--quick` leaves out build and browser.
 */
const root = join(import.meta.dirname, '..');
const quick = process.argv.includes('--quick');
const reports = mkdtempSync(join(tmpdir(), 'shoulderline-test-'));
const started = Date.now();
let passed = 0;
let failed = 0;

function run(title, command, args, env = {}) {
  process.stdout.write(`\n── ${title}\n`);
  const began = Date.now();
  const { status } = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  });
  process.stdout.write(
    `── ${title}: ${status === 0 ? 'green' : 'red'} after ${((Date.now() - began) / 1000).toFixed(1)} s\n`,
  );
  return status === 0;
}

const node = (title, file, ...args) =>
  run(title, process.execPath, [join(root, 'node_modules', file), ...args]);

function count(green) {
  if (green) passed += 1;
  else failed += 1;
}

/** Adds a runner's own counts; a runner that gave none, or failed without a failed test, counts as one failure. */
function add(counts, green) {
  passed += counts?.passed ?? 0;
  failed += counts?.failed ?? 0;
  if (counts === null || counts.passed + counts.failed === 0 || (!green && counts.failed === 0)) failed += 1;
}

function vitestCounts(path) {
  if (!existsSync(path)) return null;
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(path, 'utf8'));
  return { passed: numPassedTests, failed: numFailedTests };
}

function playwrightCounts(path) {
  if (!existsSync(path)) return null;
  const { expected, unexpected, flaky } = JSON.parse(readFileSync(path, 'utf8')).stats;
  return { passed: expected + flaky, failed: unexpected };
}

/** A browser to test in; says what it does before it installs one. */
function needBrowser() {
  const found = findBrowser();
  if (found !== null) return found;
  const debian = process.platform === 'linux' && existsSync('/usr/bin/apt-get') && process.getuid?.() === 0;
  if (debian) {
    process.stdout.write('No browser found: installing chromium with apt-get.\n');
    run('apt-get update', 'apt-get', ['update', '-qq']);
    run(
      'apt-get install chromium',
      'apt-get',
      ['install', '-y', '-qq', '--no-install-recommends', 'chromium'],
      { DEBIAN_FRONTEND: 'noninteractive' },
    );
    // Not every Debian has it.
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium-headless-shell'], {
      stdio: 'ignore',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
    return findBrowser();
  }
  process.stdout.write('No browser found: installing Playwright’s chromium.\n');
  run('playwright install chromium', process.execPath, [
    join(root, 'node_modules', 'playwright', 'cli.js'),
    'install',
    'chromium',
  ]);
  return 'playwright';
}

const LEAN = '/usr/bin/chromium-headless-shell';
/** The same Chromium without what a window needs: pages are shown by it in two thirds of the time. Null where it is not there, or is another version. */
function leanAs(browser) {
  const versionOf = (program) =>
    /[0-9.]{7,}/.exec(spawnSync(program, ['--version'], { encoding: 'utf8' }).stdout ?? '')?.[0];
  return existsSync(LEAN) && versionOf(LEAN) === versionOf(browser) ? LEAN : null;
}

/** Runs beside others; what it says comes out in one piece when it has ended. */
function beside(title, file, ...args) {
  return new Promise((ended) => {
    const began = Date.now();
    const child = spawn(process.execPath, [join(root, file), ...args], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const said = [];
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (piece) => said.push(piece));
    child.on('close', (status) => {
      const seconds = ((Date.now() - began) / 1000).toFixed(1);
      process.stdout.write(`\n── ${title}\n${Buffer.concat(said).toString()}`);
      process.stdout.write(`── ${title}: ${status === 0 ? 'green' : 'red'} after ${seconds} s\n`);
      ended(status === 0);
    });
  });
}

/** Where most of what is linted lies: each is read with its own types, apart from the others, so that every core has work. */
const LINTED = [['ui'], ['test'], ['main', 'labels']];
const ESLINT = ['node_modules/eslint/bin/eslint.js', '--max-warnings', '0'];

/** As many at a time as there are cores; what takes longest is begun first. */
async function checks() {
  const others = LINTED.flat().flatMap((folder) => ['--ignore-pattern', `${folder}/**`]);
  const waiting = [
    ['lint ui', ...ESLINT, ...LINTED[0]],
    ['types', 'test/types.mjs'],
    ...LINTED.slice(1).map((folders) => [`lint ${folders.join(' ')}`, ...ESLINT, ...folders]),
    ['format', 'node_modules/prettier/bin/prettier.cjs', '--check', '.'],
    ['lint all else', ...ESLINT, '.', ...others],
  ];
  const work = async () => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) count(await beside(...next));
  };
  await Promise.all(Array.from({ length: availableParallelism() }, work));
}

await checks();
const unitReport = join(reports, 'unit.json');
const unit = node(
  'unit tests',
  'vitest/vitest.mjs',
  'run',
  '--project',
  'node',
  '--project',
  'dom',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${unitReport}`,
);
add(vitestCounts(unitReport), unit);

if (!quick) {
  const built = node('build', 'vite/bin/vite.js', 'build', '--app', '--logLevel', 'warn');
  count(built);
  const browser = built ? needBrowser() : null;
  if (browser === null) failed += 1;
  else {
    const lean = leanAs(browser);
    process.stdout.write(`pages are shown by ${lean ?? browser}\n`);
    const report = join(reports, 'browser.json');
    const green = run(
      'browser tests',
      process.execPath,
      [join(root, 'node_modules', '@playwright', 'test', 'cli.js'), 'test', '--reporter=list,json'],
      {
        PLAYWRIGHT_JSON_OUTPUT_NAME: report,
        ...(browser === 'playwright' ? {} : { CHROMIUM: browser }),
        ...(lean === null ? {} : { PAGES_IN: lean }),
      },
    );
    add(playwrightCounts(report), green);
  }
}

rmSync(reports, { recursive: true, force: true });
const minutes = ((Date.now() - started) / 60_000).toFixed(1);
process.stdout.write(`\nafter ${minutes} minutes\n${passed} passed, ${failed} failed\n`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
