import { hostname, networkInterfaces } from 'node:os';
import { isPrivate } from '#core/api/private-address.ts';

/** The private IPv4 addresses of this machine's own interfaces that others can reach, in a settled order. */
export function ownAddresses(interfaces = networkInterfaces()): string[] {
  const found = Object.values(interfaces).flatMap((each) => each ?? []);
  return [
    ...new Set(
      found.flatMap(({ address, family, internal }) =>
        family === 'IPv4' && !internal && isPrivate(address) ? [address] : [],
      ),
    ),
  ].sort();
}

/** The name that this machine has in a network without a name server ("planer-pc.local"), or none. */
export function localName(host = hostname()): string | null {
  const [label = ''] = host.toLowerCase().split('.');
  return isLabel(label) ? `${label}.local` : null;
}

/** Can a machine be called so: letters, digits and hyphens within, at most 63 (RFC 1123 section 2.1)? */
export function isLabel(text: string): boolean {
  return /^[a-z\d]([a-z\d-]{0,61}[a-z\d])?$/.test(text);
}
