import type { Backup } from '../store/archive/backups.ts';
import type { Restored } from '../store/archive/restore.ts';

/** A backup as made, with what reading it back found. */
export interface MadeBackup extends Backup {
  readonly jobs: number;
  readonly entries: number;
}

/** What can be done with all of a shop's data: by this process when no hub runs, or by the hub that does. */
export interface DataWork {
  list(): Promise<readonly Backup[]>;
  backup(): Promise<MadeBackup>;
  restore(name: string): Promise<Restored>;
  /** Everything in one file, a piece at a time; with the network's keys where they are asked for. */
  everything(withNetworkKeys: boolean): Promise<AsyncIterable<string | Uint8Array>>;
  take(from: string, bytes: AsyncIterable<Buffer>): Promise<Restored>;
  close(): Promise<void>;
}

/** Why it could not be done: one line for a person. */
export class DataFault extends Error {}
