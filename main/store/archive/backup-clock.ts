import type { Backup } from './backups.ts';

export interface BackupClock {
  /** Why the last one that was due could not be made; null when it could. */
  readonly trouble: string | null;
  stop(): Promise<void>;
}

export interface Due {
  list(): Promise<readonly Backup[]>;
  everyHours(): number;
  make(): Promise<unknown>;
  report(error: unknown): void;
  now(): number;
}

const LOOK_MS = 60_000;

/** Is a backup due? Yes when there is none, when the newest is old enough, or when the clock was set back behind it. */
export function backupDue(newest: string | undefined, everyHours: number, now: number): boolean {
  const at = newest === undefined ? Number.NaN : Date.parse(newest);
  return !(at <= now && now - at < everyHours * 3_600_000);
}

/** Looks every minute whether a backup is due, and makes it. One that fails is tried again. */
export function startBackupClock(due: Due, lookMs = LOOK_MS): BackupClock {
  let trouble: string | null = null;
  let looking: Promise<void> | null = null;
  const look = async () => {
    try {
      const [newest] = await due.list();
      if (backupDue(newest?.at, due.everyHours(), due.now())) await due.make();
      trouble = null;
    } catch (error) {
      trouble = error instanceof Error ? error.message : String(error);
      due.report(error);
    }
  };
  const begin = () => {
    looking ??= look().finally(() => (looking = null));
  };
  const timer = setInterval(begin, lookMs);
  timer.unref();
  return {
    get trouble() {
      return trouble;
    },
    async stop() {
      clearInterval(timer);
      await looking;
    },
  };
}
