import { bytesOf, PRIVATE_NETWORKS } from '#core/api/private-address.ts';

/** What the shop's authority may vouch for by name: the names of a network without a name server, and the machine itself. */
const PERMITTED_NAMES = ['local', 'localhost'];

/** Tags of ASN.1 (X.690): a sequence; the permitted subtrees; a GeneralName that is a DNS name, and one that is an address. */
const SEQUENCE = 0x30;
const PERMITTED = 0xa0;
const DNS_NAME = 0x82;
const ADDRESS = 0x87;

/** The object identifier of the extension, RFC 5280 section 4.2.1.10. */
export const NAME_CONSTRAINTS_ID = '2.5.29.30';

/**
 * The extension that keeps the shop's authority to names within the shop: whoever trusts it trusts it for nothing else, even
 * if its key is stolen. RFC 5280 section 4.2.1.10; an address is four bytes followed by its mask.
 */
export function nameConstraints(): Uint8Array<ArrayBuffer> {
  const names = PERMITTED_NAMES.map((name) => element(DNS_NAME, [...Buffer.from(name, 'latin1')]));
  const addresses = PRIVATE_NETWORKS.map(({ from, mask }) =>
    element(ADDRESS, [...bytesOf(from), ...bytesOf(mask)]),
  );
  const subtrees = [...names, ...addresses].map((base) => element(SEQUENCE, base));
  return Uint8Array.from(element(SEQUENCE, element(PERMITTED, subtrees.flat())));
}

/** A tag, the length in its shortest form (X.690 section 8.1.3), and the bytes. */
function element(tag: number, bytes: readonly number[]): number[] {
  const { length } = bytes;
  if (length > 255) throw new Error(`an element of ${length} bytes was not reckoned with`);
  return [tag, ...(length < 128 ? [length] : [0x81, length]), ...bytes];
}
