import { TryAgain } from './try-again.ts';

/** Loads of the same thing, one after another. What does not come whole is loaded again after a moment. */
export class LoadTurns {
  readonly #load: () => Promise<boolean>;
  readonly #again = new TryAgain(() => this.next().catch(() => undefined));
  #turns: Promise<void> = Promise.resolve();
  #waiting = 0;
  #whole = false;

  /** `load` says whether all came. */
  constructor(load: () => Promise<boolean>) {
    this.#load = load;
  }

  /** Did all come the last time, and nothing is being loaded? */
  get whole(): boolean {
    return this.#whole;
  }

  /** Does none run or wait? */
  get idle(): boolean {
    return this.#waiting === 0;
  }

  /** Loads once more; rejects with what the load throws. */
  next(): Promise<void> {
    this.#waiting += 1;
    const turn = this.#turns.then(async () => {
      this.#whole = false;
      try {
        this.#whole = await this.#load();
      } finally {
        this.#waiting -= 1;
        if (this.#whole) this.#again.came();
        else this.#again.missed();
      }
    });
    this.#turns = turn.catch(() => undefined);
    return turn;
  }

  /** There is reason to think that the next load comes whole: what is missed then is tried again soon. */
  hopeful(): void {
    this.#again.came();
  }
}
