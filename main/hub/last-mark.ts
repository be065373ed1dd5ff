import type { Store } from '../store/store.ts';

/** A mark by its number and its id: with both it is known for the same one whatever data the hub has meanwhile. */
export interface MarkPlace {
  readonly seq: number;
  readonly mark: string;
}

/** Among so many last entries a mark is looked for; the rest may be prints. */
const MOST_LOOKED_THROUGH = 1000;

/** Knows the last mark on disk. */
export class LastMark {
  readonly #store: Pick<Store, 'lastSeq' | 'since' | 'onMark'>;
  #known: MarkPlace | null | undefined;
  /** Counts what was forgotten: what was looked up before is not taken for what is there now. */
  #forgotten = 0;
  /** Hears of no more marks. */
  readonly close: () => void;

  constructor(store: Pick<Store, 'lastSeq' | 'since' | 'onMark'>) {
    this.#store = store;
    this.close = store.onMark(({ seq, mark }) => (this.#known = { seq, mark: mark.id }));
  }

  /** The last mark; null where there is none, or none that can be found soon. */
  async now(): Promise<MarkPlace | null> {
    if (this.#known === undefined) {
      const at = this.#forgotten;
      const found = await this.#lookedUp();
      if (at === this.#forgotten) this.#known ??= found;
    }
    return this.#known ?? null;
  }

  /** Other data are in place. */
  forget(): void {
    this.#known = undefined;
    this.#forgotten += 1;
  }

  async #lookedUp(): Promise<MarkPlace | null> {
    let found: MarkPlace | null = null;
    try {
      const after = Math.max(0, this.#store.lastSeq - MOST_LOOKED_THROUGH);
      for await (const { seq, mark } of this.#store.since(after)) found = { seq, mark: mark.id };
    } catch {
      return null;
    }
    return found;
  }
}
