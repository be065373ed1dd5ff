import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const PLACES = ['/usr/bin', '/usr/local/bin', '/usr/sbin'];

/** Is a program of this name installed? */
export function has(program: string): boolean {
  return PLACES.some((place) => existsSync(join(place, program)));
}

/** Puts an authority, a certificate as PEM, into a folder's own database of certificates, as Chromium and Firefox read it, to vouch for sites. */
export function trustInDatabase(folder: string, authority: string): void {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, 'shop.pem');
  writeFileSync(file, authority);
  const run = (...args: string[]) => execFileSync('certutil', ['-d', `sql:${folder}`, ...args]);
  run('-N', '--empty-password');
  run('-A', '-t', 'C,,', '-n', 'shop', '-i', file);
}
