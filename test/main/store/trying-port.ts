import { basename } from 'node:path';
import { disk } from '#main/store/files/disk.ts';
import type { FilePort, GrowingFile } from '#main/store/files/file-port.ts';

export type Step = 'create' | 'write' | 'flush' | 'truncate' | 'rename' | 'remove' | 'folder';

/** The disk, with every step that changes it written down, and with steps that can be made to fail. */
export interface TryingPort extends FilePort {
  /** "write log.jsonl", "flush log.jsonl", "rename job.json" … in the order in which they were finished. */
  readonly steps: string[];
  /** Makes steps of a kind fail with a system's code, for files whose name matches; "short" writes half instead. */
  break(step: Step, code: string, name?: RegExp): void;
  /** Runs before each step; what it throws stops everything, as a wall switch would. */
  before: (step: string) => void;
  mend(): void;
}

export function tryingPort(under: FilePort = disk): TryingPort {
  const faults: { step: Step; code: string; name: RegExp }[] = [];
  const steps: string[] = [];
  const broken = (step: Step, path: string) =>
    faults.find((fault) => fault.step === step && fault.name.test(basename(path)))?.code;
  const tried = async <T>(step: Step, path: string, work: () => T | Promise<T>): Promise<T> => {
    port.before(`${step} ${basename(path)}`);
    const code = broken(step, path);
    if (code !== undefined && code !== 'short')
      throw Object.assign(new Error(`${code}: ${step} ${path}`), { code });
    const given = await work();
    steps.push(`${step} ${basename(path)}`);
    return given;
  };
  const file = (inner: GrowingFile, path: string): GrowingFile => ({
    write: (bytes) =>
      tried('write', path, () =>
        inner.write(
          broken('write', path) === 'short' ? bytes.subarray(0, Math.ceil(bytes.length / 2)) : bytes,
        ),
      ),
    flush: () => tried('flush', path, () => inner.flush()),
    truncate: (bytes) => tried('truncate', path, () => inner.truncate(bytes)),
    identity: inner.identity,
    displaced: (bytes) => inner.displaced(bytes),
    close: () => inner.close(),
  });
  const port: TryingPort = {
    ...under,
    steps,
    before: () => undefined,
    break: (step, code, name = /./) => void faults.push({ step, code, name }),
    mend: () => void faults.splice(0),
    create: (path) => tried('create', path, async () => file(await under.create(path), path)),
    grow: (path) => tried('create', path, async () => file(await under.grow(path), path)),
    rename: (from, to) => tried('rename', to, () => under.rename(from, to)),
    remove: (path) => tried('remove', path, () => under.remove(path)),
    flushFolder: (path) => tried('folder', path, () => under.flushFolder(path)),
  };
  return port;
}
