import { type FilePort, StoreTrouble } from './file-port.ts';

/**
 * The same files, but nothing is made, changed or removed unless the folder is still the one that is held. One that was
 * moved away or unmounted is not made anew, and another one under its name is not written into; when it is back, all
 * goes on.
 */
export function heldFolder(port: FilePort, held: () => Promise<boolean>): FilePort {
  const ifHeld = async <T>(work: () => Promise<T>): Promise<T> => {
    if (!(await held()))
      throw new StoreTrouble(
        'the data folder is not the one that was opened (moved, removed or unmounted), or the hub’s lock in it was deleted',
      );
    return work();
  };
  return {
    ...port,
    makeFolder: (path) => ifHeld(() => port.makeFolder(path)),
    create: (path) => ifHeld(() => port.create(path)),
    grow: (path) => ifHeld(() => port.grow(path)),
    link: (from, to) => ifHeld(() => port.link(from, to)),
    rename: (from, to) => ifHeld(() => port.rename(from, to)),
    remove: (path) => ifHeld(() => port.remove(path)),
  };
}
