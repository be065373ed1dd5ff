/** Where every so many-th line of the log begins, so that one is found without reading all. */
export class LogIndex {
  static readonly EVERY = 256;
  readonly #seqs: number[];
  readonly #bytes: number[];
  #since: number;

  constructor(kept: { readonly seqs: readonly number[]; readonly bytes: readonly number[] } | null = null) {
    this.#seqs = [...(kept?.seqs ?? [])];
    this.#bytes = [...(kept?.bytes ?? [])];
    this.#since = LogIndex.EVERY;
  }

  /** Notes one more line; they come in order. */
  note(seq: number, byte: number): void {
    this.#since += 1;
    if (this.#since < LogIndex.EVERY) return;
    this.#since = 0;
    this.#seqs.push(seq);
    this.#bytes.push(byte);
  }

  /** A place at or before the line of this number: reading on from there meets it. */
  before(seq: number): { readonly seq: number; readonly byte: number } {
    let [low, high] = [0, this.#seqs.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#seqs[middle] ?? 0) <= seq) low = middle + 1;
      else high = middle;
    }
    return low === 0
      ? { seq: 0, byte: 0 }
      : { seq: (this.#seqs[low - 1] ?? 1) - 1, byte: this.#bytes[low - 1] ?? 0 };
  }

  /** As a snapshot keeps it. */
  kept(): { readonly seqs: number[]; readonly bytes: number[] } {
    return { seqs: [...this.#seqs], bytes: [...this.#bytes] };
  }
}
