import { crc32 } from 'node:zlib';

/** The last line of a sealed document: a checksum of all that stands before it. JSON reads it as one more value. */
const SEAL = /,\n "sum": "crc32 ([0-9a-f]{8})"\n\}\n$/;
/** What is left of it where one bit of it was changed. */
const BROKEN = /"sum": |"crc32 |crc32 [0-9a-f]/;
const SEAL_LENGTH = 40;
const END = '\n}\n';

/** A document's text with a checksum in it. Older versions read over it. */
export function sealed(text: string): string {
  if (!text.endsWith(END)) throw new Error('only a document with a value in it is sealed');
  const body = text.slice(0, -END.length);
  return `${body},\n "sum": "crc32 ${sumOf(body)}"${END}`;
}

/** The text as it was before it was sealed; one that an older version wrote has no seal. Throws where it is not as it was written. */
export function unsealed(text: string): string {
  const found = SEAL.exec(text);
  if (found === null) {
    if (BROKEN.test(text.slice(-SEAL_LENGTH))) throw new Error('its checksum cannot be read');
    return text;
  }
  const body = text.slice(0, found.index);
  if (sumOf(body) !== found[1]) throw new Error('its checksum is wrong');
  return `${body}${END}`;
}

function sumOf(text: string): string {
  return crc32(text).toString(16).padStart(8, '0');
}
