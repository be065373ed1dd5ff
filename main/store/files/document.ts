import { type Adapter, Low } from 'lowdb';
import type { FoundDocument } from '../journal.ts';
import { type FilePort, replaceFile } from './file-port.ts';
import { formatOf } from './migration.ts';
import { sealed, unsealed } from './seal.ts';

/** How a document is written: the same text for the same data. */
export function documentText(data: unknown): string {
  return `${JSON.stringify(data, null, 1)}\n`;
}

/** A document that people write: kept by lowdb through an adapter that flushes file and folder, sealed with a checksum. */
export async function openDocument<T>(
  port: FilePort,
  path: string,
  read: (text: string) => T,
  fresh: T,
): Promise<Low<T>> {
  const adapter: Adapter<T> = {
    async read() {
      const bytes = await port.read(path);
      return bytes === null ? null : read(unsealed(bytes.toString('utf8')));
    },
    write: (data) => replaceFile(port, path, sealed(documentText(data))),
  };
  const document = new Low<T>(adapter, fresh);
  await document.read();
  return document;
}

/** The same, and whether it lies there in an older form than the newest, `format`. */
export async function findDocument<T>(
  port: FilePort,
  path: string,
  read: (text: string) => T,
  format: number,
  fresh: T,
): Promise<FoundDocument<T>> {
  let older = false;
  const noting = (text: string) => {
    older = formatOf(JSON.parse(text)) < format;
    return read(text);
  };
  return { document: await openDocument(port, path, noting, fresh), older };
}
