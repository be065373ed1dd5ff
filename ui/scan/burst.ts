/** Between two keys of a scanner there is at most this; a person is slower. */
const MOST_GAP_MS = 120;
const LEAST_KEYS = 4;
const MOST_KEYS = 100;

export interface Key {
  readonly key: string;
  /** When, in milliseconds of any steady clock. */
  readonly at: number;
}

/** What one more key means: still a burst perhaps, a whole scan, or a person's key. */
export type Heard =
  | { readonly kind: 'building'; readonly keys: number }
  | { readonly kind: 'scan'; readonly text: string }
  | { readonly kind: 'other' };

/** Tells a scanner that types like a keyboard from a person: a fast run of characters ended by Enter. */
export class Burst {
  #text = '';
  #last = -Infinity;
  readonly #prefix: string;
  readonly #suffix: string;

  /** A scanner may be set to send characters before and after every code. */
  constructor(prefix = '', suffix = '') {
    this.#prefix = prefix;
    this.#suffix = suffix;
  }

  hear({ key, at }: Key): Heard {
    const gap = at - this.#last;
    this.#last = at;
    if (key === 'Enter' || key === 'Tab') {
      const text = gap <= MOST_GAP_MS ? this.#text : '';
      this.#text = '';
      return text.length >= LEAST_KEYS ? { kind: 'scan', text: this.#bare(text) } : { kind: 'other' };
    }
    if ([...key].length !== 1)
      return key === 'Shift' || key === 'CapsLock'
        ? { kind: 'building', keys: this.#text.length }
        : { kind: 'other' };
    this.#text = gap <= MOST_GAP_MS && this.#text.length < MOST_KEYS ? this.#text + key : key;
    return { kind: 'building', keys: this.#text.length };
  }

  #bare(text: string): string {
    const end =
      this.#suffix !== '' && text.endsWith(this.#suffix) ? text.slice(0, -this.#suffix.length) : text;
    return this.#prefix !== '' && end.startsWith(this.#prefix) ? end.slice(this.#prefix.length) : end;
  }
}
