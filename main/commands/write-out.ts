import { disk } from '../store/files/disk.ts';
import { draftOf, writeAll } from '../store/files/file-port.ts';
import type { DataWork } from './data-work.ts';

/** Everything into one file; with the network's keys into a new one that its owner alone can read. */
export async function writeOut(work: DataWork, path: string, withNetworkKeys: boolean): Promise<void> {
  const pieces = await work.everything(withNetworkKeys);
  // What stands there already may be open to others.
  const written = withNetworkKeys ? draftOf(disk, path) : path;
  const file = await disk.create(written);
  try {
    for await (const piece of pieces)
      await writeAll(file, typeof piece === 'string' ? Buffer.from(piece) : piece);
    await file.flush();
  } finally {
    await file.close();
  }
  if (written !== path) await disk.rename(written, path);
}
