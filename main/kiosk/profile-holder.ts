import { readFileSync, readlinkSync } from 'node:fs';
import { join } from 'node:path';

/**
 * The process that shows this profile already, as a browser notes it there; null when there is none, or where this system
 * does not tell. A second browser would only hand its page over to that one.
 */
export function profileHolder(profile: string): number | null {
  try {
    const pid = /-(\d+)$/.exec(readlinkSync(join(profile, 'SingletonLock')))?.[1];
    if (pid === undefined) return null;
    const said = readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0');
    return said.includes(`--user-data-dir=${profile}`) ? Number(pid) : null;
  } catch {
    return null;
  }
}
