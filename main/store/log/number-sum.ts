/** CRC-32 as RFC 1952, section 8, gives it: what each byte adds, by the polynomial 0xEDB88320. */
const TABLE = Int32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = (sum & 1) === 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  return sum;
});
const COLON = 58;

/**
 * The CRC-32 of a number's digits, as they stand in these bytes from one place to another, and a colon. As zlib's crc32 gives it:
 * of so few bytes it is asked sooner here than there.
 */
export function sumOfNumber(bytes: Uint8Array, from: number, to: number): number {
  let sum = -1;
  for (let k = from; k < to; k += 1) sum = (TABLE[(sum ^ (bytes[k] ?? 0)) & 255] ?? 0) ^ (sum >>> 8);
  return ~((TABLE[(sum ^ COLON) & 255] ?? 0) ^ (sum >>> 8)) >>> 0;
}
