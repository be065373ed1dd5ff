/** So many at once, and after that so many a second. */
export class Pace {
  readonly #most: number;
  readonly #perSecond: number;
  readonly #now: () => number;
  #left: number;
  #since: number;

  /** `now` is in milliseconds, of a clock that nobody sets. */
  constructor({ most, perSecond }: { readonly most: number; readonly perSecond: number }, now: () => number) {
    this.#most = most;
    this.#perSecond = perSecond;
    this.#now = now;
    this.#left = most;
    this.#since = now();
  }

  /** How many are left. */
  get left(): number {
    const now = this.#now();
    this.#left = Math.min(this.#most, this.#left + ((now - this.#since) * this.#perSecond) / 1000);
    this.#since = now;
    return this.#left;
  }

  /** Takes one; false where none is left. */
  take(): boolean {
    if (this.left < 1) return false;
    this.#left -= 1;
    return true;
  }

  /** Has nothing been taken of late? */
  get isFull(): boolean {
    return this.left >= this.#most;
  }
}
