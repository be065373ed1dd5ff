import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Development packages that the build puts into the screens: Svelte's runtime, what it imports, and Vite's loader of modules. */
export const BUNDLED = ['svelte', 'esm-env', 'clsx', 'vite'];

/** Packages whose lock entry names no license, and the one that their own license file gives. */
const TOLD_BY_FILE = { 'png-js': 'MIT' };

/** A copy of the Apache License 2.0. */
const APACHE = 'node_modules/typescript/LICENSE.txt';

/** What a shipped package carries inside itself under a license of its own, as its README says. */
const INSIDE = {
  'zxing-wasm': [
    { name: 'zxing-cpp', license: 'Apache-2.0', at: 'github.com/zxing-cpp/zxing-cpp', from: APACHE },
    { name: 'src/cpp/ZXingWasm.cpp', license: 'Apache-2.0', at: 'github.com/Sec-ant/zxing-wasm' },
    { name: 'zint', license: 'BSD-3-Clause', at: 'sourceforge.net/projects/zint' },
  ],
};

/** A license file of a package: also one in small letters, or for a part of it. */
const LICENSE_FILE = /^(licen[cs]e|copying|notice)/i;
/** Where a license file goes on with those of packages that the package's own tools carry, and the screens do not. */
const OF_OTHERS = /^# Licenses of bundled dependencies$/m;

/** Every package of the lock file, by where it lies: name, version, license, and is it for development alone? */
export function lockedPackages(root) {
  const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  return Object.entries(packages)
    .filter(([path]) => path !== '')
    .map(([path, { version, license, dev = false }]) => {
      const name = path.split('node_modules/').at(-1);
      return { path, name, version, license: license ?? TOLD_BY_FILE[name] ?? '', dev };
    });
}

/** Those that go with the program: what it needs to run, and what the build puts into its screens. By name and version. */
export function shippedPackages(root) {
  const order = ({ name, version }) => `${name} ${version}`;
  const shipped = lockedPackages(root).filter(
    ({ path, name, dev }) => !dev || (BUNDLED.includes(name) && path === `node_modules/${name}`),
  );
  return [...new Map(shipped.map((each) => [order(each), each])).values()].sort((a, b) =>
    order(a) < order(b) ? -1 : 1,
  );
}

/** The text of THIRD-PARTY-NOTICES.md: the same on every machine, from the lock file and the packages that all machines have. */
export function thirdPartyNotices(root) {
  const shipped = shippedPackages(root);
  const electron = lockedPackages(root).find(({ path }) => path === 'node_modules/electron');
  const lines = [
    '# Third-party notices',
    '',
    'What goes with Shoulderline and was made by others, with its license. Written by `npm run notices` from `package-lock.json`.',
    '',
    `Electron ${electron.version} (${electron.license}) does not go with it: \`npm run get-electron\` fetches its program from its makers, with the licenses of Electron, Chromium and Node.js in it.`,
    '',
    ...shipped.map(({ name, version, license }) => `- ${name} ${version}: ${license}`),
  ];
  for (const each of shipped) lines.push('', ...noticeOf(root, each));
  return `${lines.join('\n')}\n`;
}

function noticeOf(root, { path, name, version, license }) {
  const lines = [`## ${name} ${version}`, '', `License: ${license}`];
  const files = readdirSync(join(root, path))
    .filter((file) => LICENSE_FILE.test(file))
    .sort();
  for (const file of files) lines.push('', ...quoted(file, readFileSync(join(root, path, file), 'utf8')));
  if (files.length === 0)
    lines.push('', `It has no license file; its package.json says: ${license}${by(root, path)}.`);
  for (const { name: part, license: own, at, from } of INSIDE[name] ?? []) {
    lines.push('', `Inside it: ${part} (${at}): ${own}`);
    if (from !== undefined) lines.push('', ...quoted(own, readFileSync(join(root, from), 'utf8')));
  }
  return lines;
}

function by(root, path) {
  const { author, contributors = [] } = JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8'));
  const names = [author, ...contributors]
    .map((each) => each?.name ?? each)
    .filter((each) => typeof each === 'string');
  const bare = names.map((each) => each.replace(/\s*[<(].*/, ''));
  return bare.length === 0 ? '' : `, by ${bare.join(', ')}`;
}

/** A license's own words, inside a fence that nothing in them ends. */
function quoted(title, text) {
  const [own] = text.replaceAll('\r\n', '\n').split(OF_OTHERS);
  const lines = own.split('\n').map((line) => line.trimEnd());
  return [`${title}:`, '', '````text', ...lines.join('\n').trim().split('\n'), '````'];
}

/** Where the notices lie. */
export const NOTICES = 'THIRD-PARTY-NOTICES.md';

/** The notices as they lie in the tree; empty where there are none. */
export function writtenNotices(root) {
  const path = join(root, NOTICES);
  return existsSync(path) ? readFileSync(path, 'utf8').replaceAll('\r\n', '\n') : '';
}
