import { join } from 'node:path';
import { JOBS_NAME, SHOP_NAME } from '../files/folder-names.ts';
import { type FilePort, StoreTrouble, wordsOf } from '../files/file-port.ts';
import { copyBefore } from './copy-before.ts';

/**
 * The way back: all documents as they were, where any of them is in an older form (`older`, by their names; the shop's is
 * said apart). Gives the folder's name; null where there was nothing to copy. Throws a StoreTrouble when it could not.
 */
export async function copyOlder(
  port: FilePort,
  folder: string,
  version: string,
  older: readonly string[],
  olderShop: boolean,
): Promise<string | null> {
  if (older.length === 0 && !olderShop) return null;
  const jobs = (await port.list(join(folder, JOBS_NAME))).filter((name) => name.endsWith('.json'));
  const all = [...jobs.map((name) => `${JOBS_NAME}/${name}`), SHOP_NAME];
  const shop = (await port.size(join(folder, SHOP_NAME))) === null ? [] : [SHOP_NAME];
  try {
    return await copyBefore(port, folder, version, [...older, ...shop], all);
  } catch (error) {
    throw new StoreTrouble(
      `jobs and shop are to be copied before version ${version} writes them in its form, and could not be: ${wordsOf(error)}. Nothing was changed; make room on the disk and start again.`,
      error,
    );
  }
}
