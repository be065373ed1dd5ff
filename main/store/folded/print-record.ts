import type { PrintedOnce } from '#core/api/prints-api.ts';

/** Stickers that left a printer: which, when, on what, by whom. */
export interface Printed extends Omit<PrintedOnce, 'says'> {
  readonly job: string;
  readonly codes: readonly string[];
  /** For each of the codes a sum of the figures on its sticker; left out by versions that kept none. */
  readonly says?: readonly string[];
}

/** Which stickers were printed when, a fold over the log's print entries. */
export class PrintRecord {
  readonly #jobs: Map<string, Map<string, PrintedOnce[]>>;
  #last: (PrintedOnce & { readonly printer: string }) | null = null;

  constructor(kept: Readonly<Record<string, Readonly<Record<string, readonly PrintedOnce[]>>>> = {}) {
    this.#jobs = new Map(
      Object.entries(kept).map(([job, codes]) => [
        job,
        new Map(Object.entries(codes).map(([code, times]) => [code, [...times]])),
      ]),
    );
    for (const codes of this.#jobs.values())
      for (const times of codes.values())
        for (const once of times) if (this.#last === null || once.at >= this.#last.at) this.#remember(once);
  }

  take({ job, codes, says, ...once }: Printed): void {
    this.#remember(once);
    const known = this.#jobs.get(job) ?? new Map<string, PrintedOnce[]>();
    this.#jobs.set(job, known);
    codes.forEach((code, k) => {
      const sum = says?.[k];
      known.set(code, [...(known.get(code) ?? []), sum === undefined ? once : { ...once, says: sum }]);
    });
  }

  /** Every time that each of a job's stickers was printed. */
  of(job: string): ReadonlyMap<string, readonly PrintedOnce[]> {
    return this.#jobs.get(job) ?? NONE;
  }

  /** The last run that went to a printer of the hub's machine. */
  get last(): (PrintedOnce & { readonly printer: string }) | null {
    return this.#last;
  }

  #remember({ printer, ...once }: PrintedOnce): void {
    if (printer !== undefined) this.#last = { ...once, printer };
  }

  /** As a snapshot keeps it. */
  kept(): Record<string, Record<string, PrintedOnce[]>> {
    return Object.fromEntries([...this.#jobs].map(([job, codes]) => [job, Object.fromEntries(codes)]));
  }
}

const NONE: ReadonlyMap<string, readonly PrintedOnce[]> = new Map();
