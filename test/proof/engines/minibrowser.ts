import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Display } from '../kiosk-display.ts';
import { has } from './trust.ts';

/** WebKitGTK's own small browser. */
export const MINIBROWSER = '/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser';
/** The one place where it looks for authorities: the machine's own list. */
const TRUSTED = '/etc/ssl/certs/ca-certificates.crt';

/** What it needs and this machine lacks, as packages of Debian. */
export function lackingForMiniBrowser(): string[] {
  return [
    ...(has('WebKitWebDriver') && existsSync(MINIBROWSER) ? [] : ['webkit2gtk-driver']),
    ...(has('Xvfb') ? [] : ['xvfb']),
    ...(has('import') ? [] : ['imagemagick']),
    ...(has('unshare') ? [] : ['util-linux']),
    ...(existsSync(TRUSTED) ? [] : ['ca-certificates']),
  ];
}

/** Its surroundings: a display, and a home of its own. */
export function surroundings(display: Display, home: string): NodeJS.ProcessEnv {
  return display.env({
    HOME: home,
    XDG_DATA_HOME: join(home, 'data'),
    XDG_CACHE_HOME: join(home, 'cache'),
    XDG_RUNTIME_DIR: home,
    WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
  });
}

/**
 * A command, so that it and what it starts find one authority more (a certificate as PEM) in the machine's list, by a view
 * of the disk that is theirs alone: the list itself stays as it is.
 */
export function trusting(authority: string | null, home: string, command: readonly string[]): string[] {
  if (authority === null) return [...command];
  const list = join(home, 'trusted.pem');
  writeFileSync(list, `${readFileSync(TRUSTED, 'utf8')}\n${authority}\n`);
  return [
    ...['unshare', '--mount', ...(process.getuid?.() === 0 ? [] : ['--map-root-user'])],
    ...['sh', '-c', 'mount --bind "$1" "$2" && shift 2 && exec "$@"', 'sh', list, TRUSTED],
    ...command,
  ];
}
