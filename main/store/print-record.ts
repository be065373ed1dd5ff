import type { PrintedOnce } from '#core/api/prints-api.ts';

/** Stickers that left a printer: which, when, on what, by whom. */
export interface Printed extends PrintedOnce {
  readonly job: string;
  readonly codes: readonly string[];
}

/** Which stickers were printed when, a fold over the log's print entries. */
export class PrintRecord {
  readonly #jobs: Map<string, Map<string, PrintedOnce[]>>;

  constructor(kept: Readonly<Record<string, Readonly<Record<string, readonly PrintedOnce[]>>>> = {}) {
    this.#jobs = new Map(
      Object.entries(kept).map(([job, codes]) => [
        job,
        new Map(Object.entries(codes).map(([code, times]) => [code, [...times]])),
      ]),
    );
  }

  take({ job, codes, ...once }: Printed): void {
    const known = this.#jobs.get(job) ?? new Map<string, PrintedOnce[]>();
    this.#jobs.set(job, known);
    for (const code of codes) known.set(code, [...(known.get(code) ?? []), once]);
  }

  /** Every time that each of a job's stickers was printed. */
  of(job: string): Record<string, PrintedOnce[]> {
    return Object.fromEntries(this.#jobs.get(job) ?? []);
  }

  /** As a snapshot keeps it. */
  kept(): Record<string, Record<string, PrintedOnce[]>> {
    return Object.fromEntries([...this.#jobs.keys()].map((job) => [job, this.of(job)]));
  }
}
