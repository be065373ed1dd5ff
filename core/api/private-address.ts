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

/** Is it an IPv4 address of a private network, in its usual form? */
export function isPrivate(address: string): boolean {
  const bytes = bytesOf(address);
  const written = /^(0|[1-9]\d{0,2})(\.(0|[1-9]\d{0,2})){3}$/.test(address);
  if (!written || bytes.some((byte) => byte > 255)) return false;
  return PRIVATE_NETWORKS.some(({ from, mask }) => {
    const [start, kept] = [bytesOf(from), bytesOf(mask)];
    return bytes.every((byte, k) => (byte & (kept[k] ?? 0)) === start[k]);
  });
}
