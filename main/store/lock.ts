import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type FilePort, writeAll } from './file-port.ts';

/** Who holds a data folder: a process is told by its number, when it started, and the boot it runs in. */
export interface Holder {
  readonly pid: number;
  readonly started: string;
  readonly boot: string;
}

/** What the system says of processes; read from /proc where there is one. */
export interface ProcessTable {
  readonly boot: string;
  /** When this process started, in the system's own count; "unknown" when only that it lives can be told; null when it does not. */
  started(pid: number): string | null;
}

export const systemProcesses: ProcessTable = {
  boot: readOr('/proc/sys/kernel/random/boot_id', 'unknown'),
  started(pid) {
    const stat = readOr(`/proc/${pid}/stat`, '');
    if (stat !== '') return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
    if (systemProcesses.boot !== 'unknown') return null;
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
  | { readonly ok: true; readonly holder: Holder; readonly takenOver?: Holder; release(): Promise<void> }
  | { readonly ok: false; readonly holder: Holder };

/** Folders that this very process holds: where start times cannot be told, its own number alone says nothing. */
const heldHere = new Set<string>();

/**
 * Takes the folder for this process. The lock appears under its name whole or not at all, and only one of several that
 * try at once gets it. A lock of another boot, or of a process that is gone, is taken over.
 */
export async function takeLock(
  port: FilePort,
  folder: string,
  pid: number,
  table: ProcessTable = systemProcesses,
): Promise<Locking> {
  const path = join(folder, 'lock.json');
  const mine: Holder = { pid, started: table.started(pid) ?? 'unknown', boot: table.boot };
  const draft = join(folder, `.lock-${pid}-${process.hrtime.bigint()}`);
  const file = await port.create(draft);
  try {
    await writeAll(file, Buffer.from(`${JSON.stringify(mine)}\n`));
    await file.flush();
  } finally {
    await file.close();
  }
  let takenOver: Holder | undefined;
  try {
    while (!(await port.link(draft, path))) {
      const held = readHolder(await port.read(path));
      if (held !== null && lives(held, pid, path, table)) return { ok: false, holder: held };
      const moved = await moveAway(port, path, `${draft}-old`, held);
      if (moved !== null) return { ok: false, holder: moved };
      takenOver = held ?? { pid: 0, started: 'unreadable', boot: 'unreadable' };
    }
  } finally {
    await port.remove(draft);
  }
  await port.flushFolder(folder);
  heldHere.add(path);
  return {
    ok: true,
    holder: mine,
    ...(takenOver === undefined ? {} : { takenOver }),
    async release() {
      heldHere.delete(path);
      await port.remove(path);
    },
  };
}

function lives(held: Holder, pid: number, path: string, table: ProcessTable): boolean {
  if (held.boot !== table.boot || table.started(held.pid) !== held.started) return false;
  return held.started !== 'unknown' || held.pid !== pid || heldHere.has(path);
}

/** Moves a dead lock away. Should another process have put its own in its place just then, that one is put back and told. */
async function moveAway(
  port: FilePort,
  path: string,
  away: string,
  dead: Holder | null,
): Promise<Holder | null> {
  if ((await port.size(path)) === null) return null;
  await port.rename(path, away).catch(() => undefined);
  const moved = readHolder(await port.read(away));
  const other = moved !== null && JSON.stringify(moved) !== JSON.stringify(dead) ? moved : null;
  if (other !== null) await port.link(away, path);
  await port.remove(away);
  return other;
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
