import { isIPv4 } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';

/**
 * The addresses that a shop's certificate may stand for: those that no machine of the open network has. RFC 1918 (10/8,
 * 172.16/12, 192.168/16), RFC 1122 section 3.2.1.3 (127/8) and RFC 3927 (169.254/16).
 */
export const PRIVATE_NETWORKS: readonly { readonly from: string; readonly mask: string }[] = [
  { from: '10.0.0.0', mask: '255.0.0.0' },
  { from: '172.16.0.0', mask: '255.240.0.0' },
  { from: '192.168.0.0', mask: '255.255.0.0' },
  { from: '127.0.0.0', mask: '255.0.0.0' },
  { from: '169.254.0.0', mask: '255.255.0.0' },
];

/** The four bytes of an IPv4 address. */
export function bytesOf(address: string): number[] {
  return address.split('.').map(Number);
}

/** Is it an IPv4 address of a private network? */
export function isPrivate(address: string): boolean {
  if (!isIPv4(address)) return false;
  const bytes = bytesOf(address);
  return PRIVATE_NETWORKS.some(({ from, mask }) => {
    const [start, kept] = [bytesOf(from), bytesOf(mask)];
    return bytes.every((byte, k) => (byte & (kept[k] ?? 0)) === start[k]);
  });
}

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
  return /^[a-z\d]([a-z\d-]{0,61}[a-z\d])?$/.test(label) ? `${label}.local` : null;
}
