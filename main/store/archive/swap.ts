import { join } from 'node:path';
import { type FilePort, replaceFile } from '../files/file-port.ts';
import { forgetStanding } from '../standing/standing-record.ts';
import {
  DEVICE_WAYS_NAME,
  DEVICES_NAME,
  JOBS_NAME,
  LOG_NAME,
  NETWORK_KEYS_NAME,
  SHOP_NAME,
  SNAPSHOT_NAME,
} from '../files/folder-names.ts';

/**
 * What makes up the data of a folder; lock, PIN, backups and the program's own log stay where they are, and so do the
 * network's keys and devices where none come in.
 */
const PARTS = [JOBS_NAME, LOG_NAME, SHOP_NAME, NETWORK_KEYS_NAME, DEVICES_NAME, DEVICE_WAYS_NAME];
const INTENT = 'swap.json';
/** The folder whose data are to be put in place, and where those go that they replace. */
export const INCOMING = 'incoming';
const REPLACED = 'replaced';

/**
 * Puts the data in `incoming` in place of those in the folder. What is to be done is written down first, so that a
 * swap that was cut short is finished at the next start.
 */
export async function swapIn(port: FilePort, folder: string, incoming: string): Promise<void> {
  if (incoming !== join(folder, INCOMING)) throw new Error('only the folder for it can be swapped in');
  await port.remove(join(folder, REPLACED));
  await port.makeFolder(join(folder, REPLACED));
  await replaceFile(port, join(folder, INTENT), `${JSON.stringify({ format: 1 })}\n`);
  await finishSwap(port, folder);
}

/** Finishes a swap that was begun; nothing otherwise. Each step can be done again, wherever it was cut short. */
export async function finishSwap(port: FilePort, folder: string): Promise<void> {
  if (!(await swapBegun(port, folder))) return;
  await port.remove(join(folder, SNAPSHOT_NAME));
  await forgetStanding(port, folder);
  await port.makeFolder(join(folder, INCOMING));
  await port.makeFolder(join(folder, REPLACED));
  const incoming = await port.list(join(folder, INCOMING));
  for (const part of PARTS.filter((each) => incoming.includes(each))) {
    const present = await port.list(folder);
    if (present.includes(part)) await port.rename(join(folder, part), join(folder, REPLACED, part));
    await port.rename(join(folder, INCOMING, part), join(folder, part));
  }
  await port.flushFolder(join(folder, REPLACED));
  await port.flushFolder(folder);
  await port.remove(join(folder, INTENT));
  await port.flushFolder(folder);
  await port.remove(join(folder, INCOMING));
}

/** Was a swap begun and not finished? */
export async function swapBegun(port: FilePort, folder: string): Promise<boolean> {
  return (await port.size(join(folder, INTENT))) !== null;
}
