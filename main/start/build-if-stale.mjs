import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const SOURCES = [
  'core',
  'labels',
  'main',
  'ui',
  'package.json',
  'package-lock.json',
  'vite.config.ts',
  'tsconfig.base.json',
];

/** Builds when the sources are not those that dist was built from. Build output goes to stderr. True when all is well. */
export function buildIfStale(root) {
  if (isBuilt(root)) return true;
  process.stderr.write('shoulderline: building, this takes a few seconds\n');
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  if (!existsSync(vite)) {
    process.stderr.write('shoulderline: run "npm ci" first\n');
    return false;
  }
  const built = spawnSync(process.execPath, [vite, 'build', '--app', '--logLevel', 'warn'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
  });
  return built.status === 0;
}

/** Was dist built whole, from just these sources? */
export function isBuilt(root) {
  const stamp = stampOf(root);
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === fingerprint(root);
}

/**
 * Says that dist is being built anew: until what this gives is called, at the end, it counts as stale. It then counts as built
 * from the sources as they were at the beginning.
 */
export function buildBegins(root) {
  const from = fingerprint(root);
  rmSync(stampOf(root), { force: true });
  return () => {
    mkdirSync(join(root, 'dist'), { recursive: true });
    writeFileSync(stampOf(root), from);
  };
}

function stampOf(root) {
  return join(root, 'dist', 'built-from');
}

/** A hash over every source file's path and content. */
function fingerprint(root) {
  const hash = createHash('sha256');
  const add = (path) => {
    const full = join(root, path);
    if (!existsSync(full)) return;
    const entries = readdirSync(full, { withFileTypes: true, recursive: true });
    for (const entry of entries
      .filter((each) => each.isFile())
      .sort((a, b) => (join(a.parentPath, a.name) < join(b.parentPath, b.name) ? -1 : 1)))
      hash
        .update(join(entry.parentPath, entry.name))
        .update(readFileSync(join(entry.parentPath, entry.name)));
  };
  for (const source of SOURCES) {
    if (source.includes('.'))
      hash.update(source).update(existsSync(join(root, source)) ? readFileSync(join(root, source)) : '');
    else add(source);
  }
  return hash.digest('hex');
}
