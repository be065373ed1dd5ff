/** Between two keys of a scanner there is at most this, on a machine that keeps up; a person is slower. */
const MOST_GAP_MS = 120;
/** Keys that come one after another within this belong together, whoever types them. */
const TOGETHER_MS = 1500;
/** So many pauses between the keys of one run, and a person types. */
const PAUSES = 2;
/** Some scanners end with two keys, CR and LF: the second is no key of a person's. */
const ENDING_MS = 150;
const LEAST_KEYS = 4;
const MOST_KEYS = 100;

export interface Key {
  readonly key: string;
  /** When it was pressed, in milliseconds of any steady clock. */
  readonly at: number;
}

/** What a scanner is set to send before and after every code. */
export interface Around {
  readonly prefix: string;
  readonly suffix: string;
}
export const NOTHING_AROUND: Around = { prefix: '', suffix: '' };

/** What one more key means: a run that goes on, a person's typing, a whole scan, the end of one come twice, or none of these. */
export type Heard =
  | { readonly kind: 'building'; readonly keys: number; readonly text: string }
  | { readonly kind: 'typed'; readonly text: string }
  | { readonly kind: 'scan'; readonly text: string }
  | { readonly kind: 'ending' }
  | { readonly kind: 'other' };

/**
 * Tells a scanner that types like a keyboard from a person: a fast run of characters ended by Enter. A busy machine may
 * hold keys up, so a run that is a whole code counts however slowly it came, and no run is cut at a pause.
 */
export class Burst {
  #run = '';
  /** Where in the run the fast stretch at its end begins. */
  #fast = 0;
  #pauses = 0;
  #last = -Infinity;
  #scanned = -Infinity;
  readonly #isCode: (text: string) => boolean;
  readonly #around: () => Around;

  /** `isCode` knows a whole code; `around` is asked at the end of a run, so that news of the shop never cut one. */
  constructor(isCode: (text: string) => boolean = () => false, around: () => Around = () => NOTHING_AROUND) {
    this.#isCode = isCode;
    this.#around = around;
  }

  hear({ key, at }: Key): Heard {
    if (key === 'Shift' || key === 'CapsLock') return this.#building();
    const gap = at - this.#last;
    this.#last = at;
    if (key === 'Enter' || key === 'Tab') return this.#end(key, gap, at);
    if ([...key].length !== 1) {
      this.#clear();
      return { kind: 'other' };
    }
    if (gap > TOGETHER_MS || this.#run.length >= MOST_KEYS) this.#clear();
    if (key === ' ' && this.#run === '') return { kind: 'other' };
    if (this.#run !== '' && gap > MOST_GAP_MS) {
      this.#pauses += 1;
      this.#fast = this.#run.length;
    }
    this.#run += key;
    return this.#pauses >= PAUSES ? { kind: 'typed', text: this.#run } : this.#building();
  }

  #building(): Heard {
    return { kind: 'building', keys: this.#run.length, text: this.#run };
  }

  #end(key: string, gap: number, at: number): Heard {
    const run = gap <= TOGETHER_MS ? this.#run : '';
    const fast = gap <= MOST_GAP_MS ? run.slice(this.#fast) : '';
    this.#clear();
    if (run === '') return at - this.#scanned <= ENDING_MS ? { kind: 'ending' } : { kind: 'other' };
    const whole = [run, run.slice(run.length - fast.length)]
      .map((text) => this.#bare(text))
      .find(this.#isCode);
    const text = whole ?? (fast.length >= LEAST_KEYS || key === 'Enter' ? this.#bare(run) : undefined);
    if (text === undefined) return { kind: 'other' };
    this.#scanned = at;
    return { kind: 'scan', text };
  }

  #clear(): void {
    this.#run = '';
    this.#fast = 0;
    this.#pauses = 0;
  }

  #bare(text: string): string {
    const { prefix, suffix } = this.#around();
    const end = suffix !== '' && text.endsWith(suffix) ? text.slice(0, -suffix.length) : text;
    return prefix !== '' && end.startsWith(prefix) ? end.slice(prefix.length) : end;
  }
}
