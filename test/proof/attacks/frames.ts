/** What a connection by HTTP/2 begins with (RFC 9113 section 3.4), without settings of its own. */
export const PREFACE = Buffer.concat([Buffer.from('PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n'), frame(4, 0, 0)]);

/** Kinds of frame (RFC 9113 section 6). */
export const KIND = {
  data: 0,
  headers: 1,
  reset: 3,
  settings: 4,
  ping: 6,
  window: 8,
  continuation: 9,
} as const;
export const END_STREAM = 1;
export const END_HEADERS = 4;

/** One frame (RFC 9113 section 4.1). */
export function frame(
  kind: number,
  flags: number,
  stream: number,
  payload: Uint8Array = new Uint8Array(),
): Buffer {
  const head = Buffer.alloc(9);
  head.writeUIntBE(payload.length, 0, 3);
  head.writeUInt8(kind, 3);
  head.writeUInt8(flags, 4);
  head.writeUInt32BE(stream, 5);
  return Buffer.concat([head, payload]);
}

/** A header as it is, in no table (RFC 7541 section 6.2.2). */
function plain(name: string, value: string): Buffer {
  return Buffer.concat([Buffer.from([0]), text(name), text(value)]);
}

/** A text of less than 127 bytes, or of less than 16 511 (RFC 7541 section 5.2). */
function text(value: string): Buffer {
  const rest = value.length - 127;
  const length = rest < 0 ? [value.length] : rest < 128 ? [127, rest] : [127, (rest & 127) | 128, rest >> 7];
  return Buffer.concat([Buffer.from(length), Buffer.from(value)]);
}

/** The headers of a request. */
export function headers(
  method: string,
  host: string,
  path: string,
  more: Readonly<Record<string, string>> = {},
): Buffer {
  const all = { ':method': method, ':scheme': 'https', ':authority': host, ':path': path, ...more };
  return Buffer.concat(Object.entries(all).map(([name, value]) => plain(name, value)));
}
