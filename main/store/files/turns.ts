/** One at a time: what is asked for waits for what was asked for before it, whether that went well or not. */
export class Turns {
  #last: Promise<unknown> = Promise.resolve();

  take<T>(work: () => Promise<T>): Promise<T> {
    const turn = this.#last.then(work, work);
    this.#last = turn.catch(() => undefined);
    return turn;
  }
}
