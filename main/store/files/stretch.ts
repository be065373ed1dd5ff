/** How long is worked at a stretch before others get their turn. */
const STRETCH_MS = 8;

/** Lets marks and screens have their turn while something long is gone through. */
export class Stretch {
  #began = performance.now();

  /** Gives way where the stretch has been long enough; to be asked often. */
  giveWay(): Promise<void> | undefined {
    if (performance.now() - this.#began < STRETCH_MS) return undefined;
    return new Promise((turn) =>
      setImmediate(() => {
        this.#began = performance.now();
        turn();
      }),
    );
  }
}
