import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { FilePort } from './file-port.ts';

/** Who holds a data folder: a process is told by its number, when it started, and the boot it runs in. */
export interface Holder {
  readonly pid: number;
  readonly started: string;
  readonly boot: string;
}

/** What the system says of processes; read from /proc where there is one. */
export interface ProcessTable {
  readonly boot: string;
  /** When this process started, in the system's own count; null when no such process lives. */
  started(pid: number): string | null;
}

export const systemProcesses: ProcessTable = {
  boot: readOr('/proc/sys/kernel/random/boot_id', 'unknown'),
  started(pid) {
    const stat = readOr(`/proc/${pid}/stat`, '');
    if (stat !== '') return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
    try {
      process.kill(pid, 0);
      return 'unknown';
    } catch {
      return null;
    }
  },
};

function readOr(path: string, otherwise: string): string {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return otherwise;
  }
}

export type Locking =
  | { readonly ok: true; readonly takenOver?: Holder; release(): Promise<void> }
  | { readonly ok: false; readonly holder: Holder };

/** Takes the folder for this process. A lock of another boot, or of a process that is gone, is taken over. */
export async function takeLock(
  port: FilePort,
  folder: string,
  pid: number,
  table: ProcessTable = systemProcesses,
): Promise<Locking> {
  const path = join(folder, 'lock.json');
  const held = readHolder(await port.read(path));
  const alive = held !== null && held.boot === table.boot && table.started(held.pid) === held.started;
  if (held !== null && alive && held.pid !== pid) return { ok: false, holder: held };
  const mine: Holder = { pid, started: table.started(pid) ?? 'unknown', boot: table.boot };
  await port.replace(path, `${JSON.stringify(mine)}\n`);
  return {
    ok: true,
    ...(held === null || alive ? {} : { takenOver: held }),
    release: () => port.remove(path),
  };
}

function readHolder(bytes: Buffer | null): Holder | null {
  if (bytes === null) return null;
  try {
    const read: unknown = JSON.parse(bytes.toString('utf8'));
    if (typeof read !== 'object' || read === null) return null;
    const { pid, started, boot } = read as Partial<Record<keyof Holder, unknown>>;
    return typeof pid === 'number' && typeof started === 'string' && typeof boot === 'string'
      ? { pid, started, boot }
      : null;
  } catch {
    return null;
  }
}
