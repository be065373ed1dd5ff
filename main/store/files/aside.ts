import { basename } from 'node:path';
import { type FilePort, wordsOf } from './file-port.ts';

/** What happened to a document that could not be read: it is kept aside, never reset in silence. */
export interface DocumentTrouble {
  readonly file: string;
  readonly reason: string;
  readonly kept: string;
}

/** Renames a document that cannot be read, so that it stays whole and is not taken for a good one. */
export async function putAside(port: FilePort, path: string, error: unknown): Promise<DocumentTrouble> {
  return { file: basename(path), reason: wordsOf(error), kept: await renameAside(port, path, 'unreadable') };
}

/** Gives a file a name of its own that says why it is kept; returns that name. */
export async function renameAside(port: FilePort, path: string, why: string): Promise<string> {
  // Where nothing can be written it stays where it is.
  if (port.barred !== undefined) return basename(path);
  let kept = `${path}.${why}`;
  for (let k = 2; (await port.size(kept)) !== null; k += 1) kept = `${path}.${why}-${k}`;
  await port.rename(path, kept);
  return basename(kept);
}
