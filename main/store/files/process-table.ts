import { readFileSync, readlinkSync } from 'node:fs';

/** What the system says of processes; read from /proc where there is one. */
export interface ProcessTable {
  readonly boot: string;
  /** The pid namespace in which these numbers count; "unknown" where that cannot be told. */
  readonly space: string;
  /** When this process started, in the system's own count; "unknown" when only that it lives can be told; null when it does not. */
  started(pid: number): string | null;
}

export const UNKNOWN = 'unknown';

export const systemProcesses: ProcessTable = {
  boot: readOr(() => readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()),
  // A /proc of another namespace numbers its processes otherwise than this one's is numbered.
  space: readOr(() =>
    readlinkSync('/proc/self') === String(process.pid) ? readlinkSync('/proc/self/ns/pid') : UNKNOWN,
  ),
  started(pid) {
    const stat = readOr(() => readFileSync(`/proc/${pid}/stat`, 'utf8'), '');
    if (stat !== '') return startedBy(stat);
    if (systemProcesses.boot !== UNKNOWN) return null;
    try {
      process.kill(pid, 0);
      return UNKNOWN;
    } catch {
      return null;
    }
  },
};

/**
 * When a process started, from its line in /proc/PID/stat (proc(5): the third value is its state, the twentieth how many
 * threads it has, the twenty-second its start). Null for one that is over and only waits to be reaped; while threads of it
 * are left, one of them may still write.
 */
export function startedBy(stat: string): string | null {
  const values = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  const over = values[0] === 'Z' || values[0] === 'X' || values[0] === 'x';
  return over && Number(values[17]) <= 1 ? null : (values[19] ?? null);
}

function readOr(read: () => string, otherwise = UNKNOWN): string {
  try {
    return read();
  } catch {
    return otherwise;
  }
}
