import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { OFFER_LASTS_MS } from '#core/api/network-api.ts';

/** Digits and capitals without those that look like others, as on stickers. */
const LETTERS = '0123456789ABCDEFGHJKLMNPQRSTUVWX';
const CODE_LENGTH = 8;
/** So many wrong codes are taken from one machine, so that none ends the code for the device that it was shown to. */
const MOST_TRIES = 10;
/** And so many from all together before the code is over: one in a thousand million would be guessed. */
const MOST_OF_ALL = 1000;

/** What the office shows to pair one device. */
export interface Offered {
  /** Stands in the scanned address. */
  readonly token: string;
  /** Is typed where there is no camera. */
  readonly code: string;
  readonly until: number;
}

/** One pairing on offer, in memory alone: for ten minutes, once, by a token or by a code. */
export class PairingOffers {
  readonly #now: () => number;
  #offer: { readonly token: Buffer; readonly code: Buffer; readonly until: number } | null = null;
  #wrong = 0;
  readonly #wrongOf = new Map<string, number>();

  constructor(now: () => number = Date.now) {
    this.#now = now;
  }

  /** A new offer; the one before it is over. */
  begin(): Offered {
    const token = randomBytes(16).toString('base64url');
    const code = Array.from(randomBytes(CODE_LENGTH), (byte) => LETTERS.charAt(byte % LETTERS.length)).join(
      '',
    );
    const until = this.#now() + OFFER_LASTS_MS;
    this.#offer = { token: hashOf(token), code: hashOf(code), until };
    this.#wrong = 0;
    this.#wrongOf.clear();
    return { token, code, until };
  }

  /**
   * Takes the offer by what was scanned or typed: true once, and never after ten minutes. A code is taken no more from a
   * machine (`from`, its address) that said ten wrong ones.
   */
  take(secret: string, from: string): boolean {
    const offer = this.#offer;
    if (offer === null || this.#now() > offer.until) return false;
    const typed = secret.toUpperCase().replace(/[\s-]/g, '');
    const scanned = timingSafeEqual(offer.token, hashOf(secret));
    const wrong = this.#wrongOf.get(from) ?? 0;
    const mayType = wrong < MOST_TRIES && this.#wrong < MOST_OF_ALL;
    const right = scanned || (mayType && timingSafeEqual(offer.code, hashOf(typed)));
    if (right) this.#offer = null;
    else if (mayType && typed.length <= CODE_LENGTH + 2) {
      this.#wrongOf.set(from, wrong + 1);
      this.#wrong += 1;
    }
    return right;
  }

  /** No pairing is on offer any more. */
  end(): void {
    this.#offer = null;
  }
}

function hashOf(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
