import { Readable, type Transform } from 'node:stream';
import { createGunzip, createGzip } from 'node:zlib';
import type { FilePort } from './file-port.ts';

const SLICE = 1024 * 1024;

/** A text packed. */
export function pack(lines: AsyncIterable<Buffer | string> | Iterable<string>): AsyncIterable<Buffer> {
  return through(lines, createGzip());
}

/** The bytes before packing. */
export function unpack(packed: AsyncIterable<Buffer>): AsyncIterable<Buffer> {
  return through(packed, createGunzip());
}

/** A file's bytes from a place on, a slice at a time. */
export async function* slices(port: FilePort, path: string, from = 0): AsyncGenerator<Buffer> {
  for (let at = from; ; at += SLICE) {
    const bytes = await port.slice(path, at, at + SLICE);
    if (bytes.length > 0) yield bytes;
    if (bytes.length < SLICE) return;
  }
}

/** What comes out at the other end; a fault at the near end comes out too. */
function through(
  source: AsyncIterable<Buffer | string> | Iterable<string>,
  transform: Transform,
): AsyncIterable<Buffer> {
  const near = Readable.from(source);
  near.on('error', (error) => transform.destroy(error));
  return near.pipe(transform);
}
