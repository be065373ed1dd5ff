/** Slots of a table, and how many of them are filled before the next table is begun. */
const SLOTS = 1 << 16;
const FILLED = 40_000;
/** A slot: the 128 bits of a uuid, and the number of its entry (0: free). */
const WORDS = 5;

/**
 * Which ids were accepted, and under which number: about 33 bytes for each, as long as the log. Tables are of one
 * size, so that none is ever made anew; a full one never changes again.
 */
export class SeenIds {
  readonly #tables: { readonly words: Uint32Array; filled: number }[];

  constructor(kept: readonly { readonly words: Uint32Array; readonly filled: number }[] = []) {
    this.#tables = kept.map((table) => ({ ...table }));
  }

  /** The number under which this id was accepted, or nothing. */
  find(id: string): number | undefined {
    const key = keyOf(id);
    for (let k = this.#tables.length - 1; k >= 0; k -= 1) {
      const words = this.#tables[k]?.words;
      if (words === undefined) continue;
      const at = slotOf(words, key);
      const seq = words[at + 4] ?? 0;
      if (seq !== 0) return seq;
    }
    return undefined;
  }

  add(id: string, seq: number): void {
    let table = this.#tables.at(-1);
    if (table === undefined || table.filled >= FILLED) {
      table = { words: new Uint32Array(SLOTS * WORDS), filled: 0 };
      this.#tables.push(table);
    }
    const key = keyOf(id);
    const at = slotOf(table.words, key);
    for (let k = 0; k < 4; k += 1) table.words[at + k] = key[k] ?? 0;
    table.words[at + 4] = seq;
    table.filled += 1;
  }

  get count(): number {
    return this.#tables.reduce((sum, { filled }) => sum + filled, 0);
  }

  /** As a snapshot keeps it: full tables as they are, the last one as a copy. */
  kept(): { readonly words: Uint32Array; readonly filled: number }[] {
    const last = this.#tables.length - 1;
    return this.#tables.map(({ words, filled }, k) => ({
      words: k === last ? words.slice() : words,
      filled,
    }));
  }

  /** Bytes of one table. */
  static readonly TABLE_BYTES = SLOTS * WORDS * 4;
}

type Key = Uint32Array;

/** The key that was made last: one id is looked at at a time. */
const KEY: Key = new Uint32Array(4);

/** A uuid's 128 bits, four words of eight digits each, its dashes left out. */
function keyOf(id: string): Key {
  KEY[0] = (half(id, 0) << 16) | half(id, 4);
  KEY[1] = (half(id, 9) << 16) | half(id, 14);
  KEY[2] = (half(id, 19) << 16) | half(id, 24);
  KEY[3] = (half(id, 28) << 16) | half(id, 32);
  return KEY;
}

/** Four hexadecimal digits from a place on. */
function half(id: string, at: number): number {
  return (digit(id, at) << 12) | (digit(id, at + 1) << 8) | (digit(id, at + 2) << 4) | digit(id, at + 3);
}

/** "0" to "9" end in their value, "a" to "f" and "A" to "F" in 1 to 6, and only those have a bit of 64. */
function digit(id: string, at: number): number {
  const sign = id.charCodeAt(at);
  return (sign & 15) + (sign >> 6) * 9;
}

/** The slot of this key: its own, or the free one where it would go. */
function slotOf(words: Uint32Array, key: Key): number {
  const a = key[0] ?? 0;
  const b = key[1] ?? 0;
  const c = key[2] ?? 0;
  const d = key[3] ?? 0;
  let mixed =
    Math.imul(a ^ Math.imul(b, 0x85ebca6b), 0xc2b2ae35) ^ Math.imul(c ^ Math.imul(d, 0x27d4eb2f), 0x165667b1);
  mixed ^= mixed >>> 15;
  for (let slot = (mixed >>> 0) % SLOTS; ; slot = (slot + 1) % SLOTS) {
    const at = slot * WORDS;
    if (words[at + 4] === 0) return at;
    if (words[at] === a && words[at + 1] === b && words[at + 2] === c && words[at + 3] === d) return at;
  }
}
