import { homedir, platform } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';

/** What the program is told from outside. */
export interface Environment {
  readonly data: string;
  readonly port: number;
  readonly host: string;
  readonly demo: boolean;
}

export type ReadEnvironment =
  { readonly ok: true; readonly value: Environment } | { readonly ok: false; readonly message: string };

const LOOPBACK = new Set(['127.0.0.1', '::1', 'localhost']);

/** Reads SHOULDERLINE_DATA, _PORT, _HOST and _DEMO; a wrong one is a one-line message. */
export function readEnvironment(env: Readonly<Record<string, string | undefined>>): ReadEnvironment {
  const port = env.SHOULDERLINE_PORT ?? '7517';
  if (!/^\d{1,5}$/.test(port) || Number(port) > 65_535)
    return { ok: false, message: `SHOULDERLINE_PORT: expected a number from 1 to 65535; got ${port}` };
  const host = env.SHOULDERLINE_HOST ?? '127.0.0.1';
  if (!LOOPBACK.has(host))
    return {
      ok: false,
      message: `SHOULDERLINE_HOST: only this machine (127.0.0.1, ::1 or localhost) is served; got ${host}`,
    };
  const given = env.SHOULDERLINE_DATA;
  const data =
    given === undefined || given === '' ? userFolder(env) : isAbsolute(given) ? given : resolve(given);
  return { ok: true, value: { data, port: Number(port), host, demo: env.SHOULDERLINE_DEMO !== '0' } };
}

/** The folder for a user's data, as the system names it. */
function userFolder(env: Readonly<Record<string, string | undefined>>): string {
  const home = homedir();
  if (platform() === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Shoulderline');
  if (platform() === 'darwin') return join(home, 'Library', 'Application Support', 'Shoulderline');
  return join(env.XDG_DATA_HOME ?? join(home, '.local', 'share'), 'shoulderline');
}
