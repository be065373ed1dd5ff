/** So many bytes are kept over all answers; a larger one is kept by itself. */
const MOST_BYTES = 4 * 1024 * 1024;

/**
 * The last answers, each by its tag, which is another one whenever the answer would be another. Many screens that come back
 * together ask for the same: it is made once.
 */
export class RecentAnswers {
  readonly #most: number;
  readonly #kept = new Map<string, Buffer>();
  #bytes = 0;

  constructor(most = MOST_BYTES) {
    this.#most = most;
  }

  /** The answer of this tag, made if it is not among the last ones. */
  of(tag: string, make: () => Buffer): Buffer {
    const known = this.#kept.get(tag);
    const answer = known ?? make();
    this.#kept.delete(tag);
    this.#kept.set(tag, answer);
    if (known === undefined) this.#bytes += answer.length;
    for (const [oldest, { length }] of this.#kept) {
      if (this.#bytes <= this.#most || oldest === tag) break;
      this.#kept.delete(oldest);
      this.#bytes -= length;
    }
    return answer;
  }
}
