/** How many entries make a new snapshot worth while: in passing, and when the hub stops. */
const IN_PASSING = 100_000;
const AT_STOP = 1000;

/** Knows when a snapshot is due, and writes one at a time. */
export class SnapshotKeeper {
  readonly #write: () => Promise<void>;
  /** Entries that no snapshot knows. */
  #unknown: number;
  #writing: Promise<void> | null = null;

  constructor(write: () => Promise<void>, unknown: number) {
    this.#write = write;
    this.#unknown = unknown;
  }

  /** One more entry is on disk. */
  countEntry(): void {
    this.#unknown += 1;
    if (this.#unknown >= IN_PASSING) void this.write();
  }

  /** No snapshot knows any of so many entries: other data were put in place. */
  noneUpTo(entries: number): void {
    this.#unknown = entries;
  }

  /** Writes a snapshot of what is on disk now, unless one is being written. */
  write(): Promise<void> {
    if (this.#writing === null) {
      this.#unknown = 0;
      this.#writing = this.#write().finally(() => (this.#writing = null));
    }
    return this.#writing;
  }

  /** Waits for one that is being written. */
  async settled(): Promise<void> {
    await this.#writing;
  }

  /** Leaves a snapshot when much has happened since the last one. */
  async stop(): Promise<void> {
    await this.settled();
    if (this.#unknown >= AT_STOP) await this.write();
  }
}
