import { join } from 'node:path';
import { codeOf, type FilePort, StoreTrouble } from './file-port.ts';
import type { Holder } from './holder.ts';
import type { Taken } from './lock.ts';

/** Another process has the folder now, or its lock was taken away: this one is to stop. */
export class FolderLost extends StoreTrouble {
  readonly holder: Holder | null;

  constructor(holder: Holder | null) {
    super(
      holder === null
        ? 'the hub’s lock in the data folder was taken away while it ran'
        : `process ${holder.pid}${holder.host === '' ? '' : ` on ${holder.host}`} has taken the data folder over`,
    );
    this.holder = holder;
  }
}

/** Why nothing is written now, by somebody whose folder is not held at this moment. */
export async function whyNotHeld(lock: Pick<Taken, 'look' | 'successor'>): Promise<StoreTrouble> {
  return lock.look() === 'lost'
    ? new FolderLost(await lock.successor())
    : new StoreTrouble(
        'the data folder is not the one that was opened (moved, removed or unmounted), or it cannot be reached',
      );
}

/**
 * The same files, but nothing is made, changed or removed unless the folder is held at that moment. One that was moved
 * away or unmounted is not made anew, and another one under its name is not written into; when it is back, all goes on.
 * Between that look and the step that it allows another may take the folder over: that step then goes to or through the
 * holder's room, which who takes over has moved away.
 */
export function heldFolder(
  port: FilePort,
  lock: Pick<Taken, 'look' | 'successor' | 'room'>,
): FilePort & { readonly drafts: string } {
  const ifHeld = async <T>(work: () => Promise<T>): Promise<T> => {
    if (lock.look() !== 'held') throw await whyNotHeld(lock);
    return work();
  };
  let removed = 0;
  const remove = async (path: string) => {
    removed += 1;
    const gone = join(lock.room, `gone-${removed}`);
    try {
      await port.rename(path, gone);
    } catch (error) {
      if (codeOf(error) === 'EXDEV') return port.remove(path);
      if (codeOf(error) !== 'ENOENT') throw error;
      if (port.identity(lock.room) === null)
        throw new StoreTrouble(`the folder ${lock.room} was removed: start the program anew`);
      return;
    }
    await port.remove(gone);
  };
  return {
    ...port,
    drafts: lock.room,
    makeFolder: (path) => ifHeld(() => port.makeFolder(path)),
    create: (path) => ifHeld(() => port.create(path)),
    grow: (path) =>
      ifHeld(async () => {
        const file = await port.grow(path);
        return {
          ...file,
          displaced: (bytes) => (lock.look() === 'held' ? file.displaced(bytes) : whyNotHeld(lock)),
        };
      }),
    link: (from, to) => ifHeld(() => port.link(from, to)),
    rename: (from, to) => ifHeld(() => port.rename(from, to)),
    remove: (path) => ifHeld(() => remove(path)),
  };
}
