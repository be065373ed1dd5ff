import type { FilePort, GrowingFile } from './file-port.ts';
import { StoreTrouble } from './file-port.ts';

/**
 * The same files to be read, on a disk that is full or cannot be written on: whatever would change anything is refused
 * with the reason, so that the rest can still be shown.
 */
export function barredFolder(port: FilePort, barred: StoreTrouble): FilePort {
  const refuse = () => Promise.reject(barred);
  const refusing = (path: string): GrowingFile => ({
    identity: port.identity(path) ?? '',
    write: refuse,
    flush: refuse,
    truncate: refuse,
    displaced: refuse,
    close: () => Promise.resolve(),
  });
  const unlessThere = (path: string, wanted: boolean) =>
    (port.identity(path) !== null) === wanted ? Promise.resolve() : refuse();
  return {
    ...port,
    barred,
    makeFolder: (path) => unlessThere(path, true),
    create: refuse,
    grow: (path) => Promise.resolve(refusing(path)),
    link: refuse,
    rename: refuse,
    remove: (path) => unlessThere(path, false),
    flushFolder: () => Promise.resolve(),
  };
}
