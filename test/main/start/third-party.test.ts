import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  BUNDLED,
  lockedPackages,
  shippedPackages,
  thirdPartyNotices,
  writtenNotices,
} from '#main/start/third-party.mjs';

const root = join(import.meta.dirname, '..', '..', '..');

/** What goes with the program may be under these. */
const SHIPPED = ['MIT', 'ISC', '0BSD', 'BSD-3-Clause', 'BlueOak-1.0.0', 'Zlib', 'OFL-1.1', 'Apache-2.0'];
/** What only builds and tests it may be under these too. */
const DEVELOPMENT = ['BSD-2-Clause', 'CC0-1.0', 'MIT-0', 'MPL-2.0', 'Unlicense'];

/** Is a license, as a package names it, allowed: of several joined by OR one, of several joined by AND each? */
function allows(list: readonly string[], license: string): boolean {
  const bare = license.replace(/[()]/g, '');
  return bare.split(' OR ').some((choice) => choice.split(' AND ').every((each) => list.includes(each)));
}

test('a license is allowed where all that it demands is on the list', () => {
  expect(allows(['MIT', 'Zlib'], '(MIT AND Zlib)')).toBe(true);
  expect(allows(['MIT'], '(MIT AND Zlib)')).toBe(false);
  expect(allows(['MIT'], '(MIT OR GPL-3.0)')).toBe(true);
  expect(allows(['MIT'], '')).toBe(false);
});

test('every package of the lock file is under a license of the list, and what goes with the program under one of the shorter', () => {
  const locked = lockedPackages(root);
  expect(locked.length).toBeGreaterThan(300);
  const list = [...SHIPPED, ...DEVELOPMENT];
  const named = ({ name, version, license }: (typeof locked)[number]) => `${name} ${version}: ${license}`;
  expect(locked.filter(({ license }) => !allows(list, license)).map(named)).toEqual([]);
  expect(
    shippedPackages(root)
      .filter(({ license }) => !allows(SHIPPED, license))
      .map(named),
  ).toEqual([]);
});

test('the lists hold no license that no package has', () => {
  const met = new Set(lockedPackages(root).flatMap(({ license }) => license.match(/[\w.-]+/g) ?? []));
  expect([...SHIPPED, ...DEVELOPMENT].filter((license) => !met.has(license))).toEqual([]);
});

test('the notices name every package that goes with the program, with its version and license, and are what npm run notices writes now', () => {
  const written = writtenNotices(root);
  for (const { name, version, license } of shippedPackages(root)) {
    expect(written).toContain(`\n- ${name} ${version}: ${license}\n`);
    expect(written).toContain(`\n## ${name} ${version}\n\nLicense: ${license}\n`);
  }
  expect(written === thirdPartyNotices(root), 'run "npm run notices"').toBe(true);
});

test('what goes with the program is the same on every machine', () => {
  expect(shippedPackages(root).filter(({ name }) => /(linux|darwin|win32)-(x64|arm64)/.test(name))).toEqual(
    [],
  );
});

/** The packages that the sources in a folder import, types and what is our own left out. */
function importedIn(folder: string): string[] {
  const files = readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((file) => file.isFile() && /\.(ts|js|svelte)$/.test(file.name) && !file.name.endsWith('.d.ts'))
    .map((file) => readFileSync(join(file.parentPath, file.name), 'utf8'));
  const names = files.flatMap((text) =>
    [
      ...text.matchAll(
        /^(?!\s*(?:import type|export type|\*|\/))[^'\n]*\b(?:from|import) '((?:@[\w.-]+\/)?[a-z][\w.-]*)(?:\/[^']*)?';/gm,
      ),
    ].map(([, name = '']) => name),
  );
  return [...new Set(names)].sort();
}

test('the notices name each package that our sources import, and those that Svelte’s runtime does', () => {
  const shipped = new Set(shippedPackages(root).map(({ name }) => name));
  const ours = ['core', 'labels', 'main', 'ui'].flatMap(importedIn);
  expect(ours).toEqual(expect.arrayContaining(['svelte', 'zod', 'fastify', 'pdf-lib', 'zxing-wasm']));
  const runtime = ['internal/client', 'internal/shared', 'reactivity', 'attachments'].flatMap((folder) =>
    importedIn(`node_modules/svelte/src/${folder}`),
  );
  expect(runtime).toEqual(expect.arrayContaining(['esm-env', 'clsx']));
  const missing = [...ours, ...runtime].filter((name) => !shipped.has(name) && name !== 'electron');
  expect(missing).toEqual([]);
  expect(BUNDLED.filter((name) => !shipped.has(name))).toEqual([]);
});
