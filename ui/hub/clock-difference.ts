/** So many round trips are looked at: the quickest of them tells best. */
const KEPT = 8;
/** From so much on a clock was set meanwhile, and what was known of it is void. */
const STEP_MS = 2000;

interface Trip {
  readonly took: number;
  readonly ahead: number;
}

/**
 * By how much this device's clock is ahead of the hub's. The hub's time is taken to be that of the middle of a round trip; the
 * error is half of what the trip took at most, so the quickest of the last few counts.
 */
export class ClockDifference {
  #trips: readonly Trip[] = [];
  /** What this clock shows more than the one that runs since the page was loaded, which nobody sets. */
  #over: number | null = null;

  /** One round trip: when it began and ended by this device's clock, and the hub's time in between; `steady` is a clock that nobody sets. All in milliseconds. */
  take(began: number, ended: number, hub: number, steady: number): void {
    const over = ended - steady;
    if (this.#over === null || Math.abs(over - this.#over) > STEP_MS) this.#trips = [];
    this.#over = over;
    const trip = { took: ended - began, ahead: (began + ended) / 2 - hub };
    this.#trips = [...this.#trips, trip].slice(-KEPT);
  }

  /** In whole milliseconds; null while nothing is known. */
  get ahead(): number | null {
    const [best] = [...this.#trips].sort((a, b) => a.took - b.took);
    return best === undefined ? null : Math.round(best.ahead);
  }
}
