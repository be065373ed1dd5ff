import { homedir, platform } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import { isPrivate } from '#core/api/private-address.ts';
import { isLabel } from '../network/own-addresses.ts';
import type { NetworkTold } from '../network/network-desk.ts';

/** What the program is told from outside. */
export interface Environment {
  readonly data: string;
  readonly port: number;
  readonly host: string;
  readonly demo: boolean;
  readonly network: NetworkTold;
}

export type ReadEnvironment =
  { readonly ok: true; readonly value: Environment } | { readonly ok: false; readonly message: string };

const LOOPBACK = new Set(['127.0.0.1', '::1', 'localhost']);

/** Reads SHOULDERLINE_DATA, _PORT, _HOST and _DEMO, and what is said of the network; a wrong one is a one-line message. */
export function readEnvironment(env: Readonly<Record<string, string | undefined>>): ReadEnvironment {
  const ports = { PORT: '7517', NETWORK_PORT: '7518', TRUST_PORT: '7519' };
  for (const [name, usual] of Object.entries(ports)) {
    const said = env[`SHOULDERLINE_${name}`] ?? usual;
    if (!/^\d{1,5}$/.test(said) || Number(said) > 65_535)
      return {
        ok: false,
        message: `SHOULDERLINE_${name}: expected a number from 1 to 65535; got ${said}`,
      };
    Object.assign(ports, { [name]: said });
  }
  const { PORT: port } = ports;
  const host = env.SHOULDERLINE_HOST ?? '127.0.0.1';
  if (!LOOPBACK.has(host))
    return {
      ok: false,
      message: `SHOULDERLINE_HOST: only this machine (127.0.0.1, ::1 or localhost) is served; got ${host}`,
    };
  const on = env.SHOULDERLINE_NETWORK ?? '';
  if (!['', '0', '1'].includes(on))
    return { ok: false, message: `SHOULDERLINE_NETWORK: expected 1 for on or 0 for off; got ${on}` };
  const hosts = (env.SHOULDERLINE_NETWORK_HOST ?? '').split(',').filter((each) => each !== '');
  const strange = hosts.find((each) => !isPrivate(each));
  if (strange !== undefined)
    return {
      ok: false,
      message: `SHOULDERLINE_NETWORK_HOST: expected IPv4 addresses of a private network, with commas between; got ${strange}`,
    };
  const name = (env.SHOULDERLINE_NETWORK_NAME ?? '').toLowerCase();
  if (name !== '' && !isLabel(name))
    return {
      ok: false,
      message: `SHOULDERLINE_NETWORK_NAME: expected a name of letters, digits and hyphens, or 0 for none; got ${name}`,
    };
  const network: NetworkTold = {
    on: on === '' ? null : on === '1',
    hosts: hosts.length === 0 ? null : hosts,
    port: Number(ports.NETWORK_PORT),
    trustPort: Number(ports.TRUST_PORT),
    ...(name === '' ? {} : { name: name === '0' ? null : `${name}.local` }),
  };
  const given = env.SHOULDERLINE_DATA;
  const data =
    given === undefined || given === '' ? userFolder(env) : isAbsolute(given) ? given : resolve(given);
  return {
    ok: true,
    value: { data, port: Number(port), host, demo: env.SHOULDERLINE_DEMO !== '0', network },
  };
}

/** The folder for a user's data, as the system names it. */
function userFolder(env: Readonly<Record<string, string | undefined>>): string {
  const home = homedir();
  if (platform() === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Shoulderline');
  if (platform() === 'darwin') return join(home, 'Library', 'Application Support', 'Shoulderline');
  return join(env.XDG_DATA_HOME ?? join(home, '.local', 'share'), 'shoulderline');
}
