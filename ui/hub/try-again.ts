/** How long is waited before each further try, in ms. After the last one nothing is tried until something new begins. */
const WAITS_MS = [1000, 2000, 4000, 8000, 15_000, 30_000, 60_000];

/** Lets a load that did not come whole be tried again, each time after a longer wait, and only so often. */
export class TryAgain {
  readonly #load: () => unknown;
  #tries = 0;
  #waiting: ReturnType<typeof setTimeout> | null = null;

  /** The load says itself, by `came` or `missed`, how it went. */
  constructor(load: () => unknown) {
    this.#load = load;
  }

  /** All came: nothing is tried again, and what is missed next is tried from the shortest wait on. */
  came(): void {
    this.#tries = 0;
    if (this.#waiting !== null) clearTimeout(this.#waiting);
    this.#waiting = null;
  }

  /** Something did not come. A try that waits already stays the next. */
  missed(): void {
    const wait = WAITS_MS[this.#tries];
    if (this.#waiting !== null || wait === undefined) return;
    this.#tries += 1;
    this.#waiting = setTimeout(() => {
      this.#waiting = null;
      this.#load();
    }, wait);
  }
}
