import { parseArgs } from 'node:util';
import { isPrivate } from '#core/api/private-address.ts';

/** Another machine whose screens are to be shown here, as the person who starts the program says it. */
export interface AskedStation {
  /** Its address, "https://192.168.1.20:7518". */
  readonly url: string;
  /** The fingerprint of the shop's certificate, where it was given; it is then compared by the program itself. */
  readonly fingerprint: string | null;
}

export type ReadStation =
  | { readonly ok: true; readonly value: AskedStation | null }
  | { readonly ok: false; readonly message: string };

/** Reads `--station` and `--fingerprint`, else SHOULDERLINE_STATION and _FINGERPRINT; null where this machine is to run its own hub. */
export function readStation(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): ReadStation {
  const { values } = parseArgs({
    args: [...args],
    strict: false,
    options: { station: { type: 'string' }, fingerprint: { type: 'string' }, hub: { type: 'boolean' } },
  });
  const address = values.station ?? env.SHOULDERLINE_STATION;
  if (address === undefined || address === '')
    return values.fingerprint === undefined
      ? { ok: true, value: null }
      : refused('--fingerprint: it is compared with what a --station shows, and none was given');
  if (values.hub === true)
    return refused('--station: shows the screens of another hub, so that --hub cannot go with it');
  const url = typeof address === 'string' ? originOf(address) : null;
  if (url === null)
    return refused(
      `--station: expected the address that the office shows under Network, as ${likely(String(address))}; got ${typeof address === 'string' ? address : 'none'}`,
    );
  const given = values.fingerprint ?? env.SHOULDERLINE_FINGERPRINT ?? '';
  if (given === '') return { ok: true, value: { url, fingerprint: null } };
  const fingerprint = typeof given === 'string' ? pairsOf(given) : null;
  return fingerprint === null
    ? refused(
        '--fingerprint: expected the 32 pairs of letters and digits that the office shows under Network, as 3F:A2:…',
      )
    : { ok: true, value: { url, fingerprint } };
}

function refused(message: string): ReadStation {
  return { ok: false, message };
}

/** The origin of another machine's address in a private network, or of its .local name, over TLS, with nothing behind it; null for any other. */
function originOf(address: string): string | null {
  if (!URL.canParse(address)) return null;
  const url = new URL(address);
  // At this machine itself a hub needs no station.
  const elsewhere = isPrivate(url.hostname) && url.hostname !== '127.0.0.1';
  const named = elsewhere || /^[a-z\d-]+\.local$/.test(url.hostname);
  const bare =
    url.pathname === '/' && [url.username, url.password, url.search, url.hash].every((each) => each === '');
  return url.protocol === 'https:' && named && bare ? url.origin : null;
}

/** What somebody may have meant. */
function likely(address: string): string {
  const [, host, port = '7518'] =
    /((?:\d{1,3}\.){3}\d{1,3}|[\w-]+\.local)(?::(\d{1,5}))?/i.exec(address) ?? [];
  return `https://${(host ?? '192.168.1.20').toLowerCase()}:${port}`;
}

/** A fingerprint in pairs with colons between, however it was typed; null where it is none. */
function pairsOf(text: string): string | null {
  const digits = text.replace(/[\s:-]/g, '').toUpperCase();
  return /^[\dA-F]{64}$/.test(digits) ? (digits.match(/../g) ?? []).join(':') : null;
}
