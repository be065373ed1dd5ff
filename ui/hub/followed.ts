import { TryAgain } from './try-again.ts';

/** Something that is asked for anew whenever it may have changed: never twice at a time, and again after a moment where it did not come. */
export class Followed {
  readonly #load: () => Promise<boolean>;
  #asking = false;
  #again = false;
  readonly #later = new TryAgain(() => this.look());

  /** The load says whether all came. */
  constructor(load: () => Promise<boolean>) {
    this.#load = load;
  }

  /** It may be another by now. */
  async look(): Promise<void> {
    this.#again = this.#asking;
    if (this.#asking) return;
    this.#asking = true;
    const came = await this.#load().catch(() => false);
    this.#asking = false;
    if (came) this.#later.came();
    else this.#later.missed();
    if (this.#again) await this.look();
  }
}
