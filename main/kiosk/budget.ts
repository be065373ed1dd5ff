/** So many times within a minute may something be done again, and no more. */
export class Budget {
  static readonly WITHIN_MS = 60_000;
  readonly most: number;
  #times: number[] = [];

  constructor(most: number) {
    this.most = most;
  }

  /** May it be done again at this time (milliseconds)? Counts it if so. */
  take(now: number): boolean {
    this.#times = this.#times.filter((time) => now - time < Budget.WITHIN_MS);
    if (this.#times.length >= this.most) return false;
    this.#times.push(now);
    return true;
  }

  /** From now on as if nothing had been done yet. */
  renew(): void {
    this.#times = [];
  }
}
