import { draftOf, type FilePort, writeAll } from '../files/file-port.ts';
import { slices } from '../files/packed.ts';
import { dirname } from 'node:path';

/**
 * Makes the log a file of its own anew, the same byte for byte: who held the folder before and still has the old file open
 * adds to that one from now on, which nobody reads. Nothing happens where there is none.
 */
export async function renewLog(port: FilePort, path: string): Promise<void> {
  if ((await port.size(path)) === null) return;
  const draft = draftOf(port, path);
  const file = await port.create(draft);
  try {
    for await (const bytes of slices(port, path)) await writeAll(file, bytes);
    await file.flush();
  } finally {
    await file.close();
  }
  await port.rename(draft, path);
  await port.flushFolder(dirname(path));
}
