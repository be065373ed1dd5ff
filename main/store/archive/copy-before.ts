import { dirname, join } from 'node:path';
import { type FilePort, replaceFile } from '../files/file-port.ts';

/**
 * Copies files as they are, before this version writes them in a newer form, into a folder named after it: whoever goes
 * back to the version before puts these back. `unchanged` are those that no start of this version has touched yet. Gives the
 * folder's name; null where every one of these lies in such a folder already, as after a start that was cut short. The
 * folder is there whole or not at all.
 */
export async function copyBefore(
  port: FilePort,
  folder: string,
  version: string,
  unchanged: readonly string[],
  all: readonly string[],
): Promise<string | null> {
  const present = await port.list(folder);
  const taken = present.filter(
    (name) => name === named(version, 1) || name.startsWith(`${named(version, 1)}-`),
  );
  for (const kept of taken) if (await holds(port, folder, kept, unchanged)) return null;
  let k = 1;
  while (present.includes(named(version, k))) k += 1;
  const draft = join(folder, '.before.new');
  await port.remove(draft);
  await port.makeFolder(draft);
  for (const name of all) {
    const bytes = await port.read(join(folder, name));
    if (bytes === null) continue;
    await port.makeFolder(dirname(join(draft, name)));
    await replaceFile(port, join(draft, name), bytes);
  }
  await port.flushFolder(draft);
  await port.rename(draft, join(folder, named(version, k)));
  await port.flushFolder(folder);
  return named(version, k);
}

function named(version: string, k: number): string {
  return `before-${version}${k === 1 ? '' : `-${k}`}`;
}

/** Does a folder hold each of these files exactly as it is now? */
async function holds(
  port: FilePort,
  folder: string,
  kept: string,
  names: readonly string[],
): Promise<boolean> {
  for (const name of names) {
    const [now, then] = [await port.read(join(folder, name)), await port.read(join(folder, kept, name))];
    if (now === null || then?.equals(now) !== true) return false;
  }
  return true;
}
