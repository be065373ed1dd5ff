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
  | {
      readonly ok: true;
      readonly holder: Holder;
      readonly takenOver?: Holder;
      /** Does this lock still lie where it was taken? Not when the folder is gone, or is another one. */
      held(): Promise<boolean>;
      /** Gives it back. Another's lock that lies there by now is left alone. */
      release(): Promise<void>;
    }
  | { readonly ok: false; readonly holder: Holder };

/** Locks that this very process holds: where start times cannot be told, its own number alone says nothing. */
const heldHere = new Set<string>();

interface Held {
  readonly number: number;
  readonly path: string;
  readonly holder: Holder | null;
}

/**
 * Takes the folder for this process. Locks are numbered and the highest counts: one of another boot, or of a process
 * that is gone, is taken over by the next number, which appears whole, and to only one of several that try at once.
 */
export async function takeLock(
  port: FilePort,
  folder: string,
  pid: number,
  table: ProcessTable = systemProcesses,
): Promise<Locking> {
  const mine: Holder = { pid, started: table.started(pid) ?? 'unknown', boot: table.boot };
  const draft = join(folder, `.lock-${pid}-${process.hrtime.bigint()}`);
  await writeDraft(port, draft, mine);
  const living = ({ holder, path }: Held) => holder !== null && lives(holder, pid, path, table);
  try {
    for (;;) {
      const before = await readLocks(port, folder);
      const other = before.find(living)?.holder;
      if (other) return { ok: false, holder: other };
      const last = before.at(-1);
      const number = (last?.number ?? 0) + 1;
      const path = join(folder, `lock-${number}.json`);
      if (!(await port.link(draft, path))) continue;
      // Somebody may have looked before this one was there: whoever then sees another one alive gives way.
      const meanwhile = (await readLocks(port, folder)).find(
        (each) => each.number !== number && living(each),
      );
      if (meanwhile?.holder) {
        await port.remove(path);
        return { ok: false, holder: meanwhile.holder };
      }
      for (const dead of before) await port.remove(dead.path);
      await port.flushFolder(folder);
      heldHere.add(path);
      const held = () => isHolder(port, path, mine);
      return {
        ok: true,
        holder: mine,
        ...(last === undefined ? {} : { takenOver: last.holder ?? UNREADABLE }),
        held,
        async release() {
          heldHere.delete(path);
          if (await held()) await port.remove(path);
        },
      };
    }
  } finally {
    await port.remove(draft);
  }
}

const UNREADABLE: Holder = { pid: 0, started: 'unreadable', boot: 'unreadable' };

async function writeDraft(port: FilePort, path: string, holder: Holder): Promise<void> {
  const file = await port.create(path);
  try {
    await writeAll(file, Buffer.from(`${JSON.stringify(holder)}\n`));
    await file.flush();
  } finally {
    await file.close();
  }
}

async function isHolder(port: FilePort, path: string, { pid, started, boot }: Holder): Promise<boolean> {
  const found = readHolder(await port.read(path).catch(() => null));
  return found?.pid === pid && found.started === started && found.boot === boot;
}

/** The locks that lie in a folder, the highest number last. */
async function readLocks(port: FilePort, folder: string): Promise<Held[]> {
  const numbers = (await port.list(folder))
    .map((name) => /^lock-(\d{1,9})\.json$/.exec(name)?.[1])
    .filter((found) => found !== undefined)
    .map(Number)
    .sort((a, b) => a - b);
  return Promise.all(
    numbers.map(async (number) => {
      const path = join(folder, `lock-${number}.json`);
      return { number, path, holder: readHolder(await port.read(path)) };
    }),
  );
}

function lives(held: Holder, pid: number, path: string, table: ProcessTable): boolean {
  if (held.boot !== table.boot || table.started(held.pid) !== held.started) return false;
  return held.started !== 'unknown' || held.pid !== pid || heldHere.has(path);
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
