import { readFileSync, writeFileSync } from 'node:fs';

/** So much memory a process had at its most since it began, in MB (Linux). */
export function mostMegabytes(pid: number): number {
  return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;
}

/** What it had before does not count from now on (proc(5), clear_refs). */
export function forgetMost(pid: number): void {
  writeFileSync(`/proc/${pid}/clear_refs`, '5');
}
