import type { AcceptedMark } from '#core/marks/mark.ts';

/** Marks are folded in together that come within this time. */
const TOGETHER_MS = 60;

/** Marks as the hub tells them, handed on together; and again to whoever asked for what they changed meanwhile. */
export class ArrivingMarks {
  readonly #fold: (marks: readonly AcceptedMark[]) => void;
  #gathered: AcceptedMark[] = [];
  readonly #noting = new Set<AcceptedMark[]>();

  constructor(fold: (marks: readonly AcceptedMark[]) => void) {
    this.#fold = fold;
  }

  take(accepted: AcceptedMark): void {
    for (const noted of this.#noting) noted.push(accepted);
    if (this.#gathered.push(accepted) > 1) return;
    setTimeout(() => {
      const gathered = this.#gathered;
      this.#gathered = [];
      this.#fold(gathered);
    }, TOGETHER_MS);
  }

  /** Does what takes its time, which is given every mark that came since it began. */
  async noted<T>(work: (came: readonly AcceptedMark[]) => Promise<T>): Promise<T> {
    const came: AcceptedMark[] = [];
    this.#noting.add(came);
    try {
      return await work(came);
    } finally {
      this.#noting.delete(came);
    }
  }
}
