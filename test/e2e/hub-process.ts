import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A built hub in a process and a data folder of its own, on a free port. */
export interface HubProcess {
  readonly url: string;
  readonly pid: number;
  readonly data: string;
  /** Waits until it says this on its standard output; it may have been said already. */
  readonly says: (what: RegExp) => Promise<string>;
  /** Ends it as a wall switch does, or as a person does. */
  end(signal: 'SIGKILL' | 'SIGTERM'): Promise<number | null>;
}

const ENTRY = join(import.meta.dirname, '..', '..', 'dist', 'hub', 'main.js');

/** Starts the hub and waits until it says where it listens; `env` goes over what this process was given, `entry` is the built hub. */
export async function startHubProcess(
  data: string,
  port = 0,
  args: readonly string[] = [],
  env: Readonly<Record<string, string>> = {},
  entry = ENTRY,
): Promise<HubProcess> {
  const child: ChildProcess = spawn(process.execPath, [entry, ...args], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, ...env, SHOULDERLINE_DATA: data, SHOULDERLINE_PORT: String(port) },
  });
  let said = '';
  const waiting = new Set<() => void>();
  child.stdout?.on('data', (chunk: Buffer) => {
    said += chunk.toString();
    waiting.forEach((look) => look());
  });
  const says = (what: RegExp) =>
    new Promise<string>((found, failed) => {
      const look = () => {
        const [all, part = all] = what.exec(said) ?? [];
        if (part === undefined) return;
        waiting.delete(look);
        found(part);
      };
      waiting.add(look);
      child.once('exit', (code) =>
        failed(new Error(`the hub ended with ${String(code)} before it said ${what.source}`)),
      );
      look();
    });
  const url = await says(/LISTENING (\S+)/);
  return {
    url,
    pid: child.pid ?? 0,
    data,
    says,
    end: (signal) =>
      new Promise((ended) => {
        if (child.exitCode !== null || child.signalCode !== null) return ended(child.exitCode);
        child.once('exit', (code) => ended(code));
        child.kill(signal);
      }),
  };
}

/** A fresh folder for a hub's data. */
export function freshData(): string {
  return mkdtempSync(join(tmpdir(), 'shoulderline-data-'));
}

export function removeData(data: string): void {
  rmSync(data, { recursive: true, force: true });
}
