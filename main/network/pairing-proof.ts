import { createHmac, randomBytes, timingSafeEqual } from 'node:crypto';

const LASTS_MS = 10 * 60_000;

/**
 * Holds a pairing to a browser that trusts the shop's certificate. Browsers register no service worker over a certificate
 * that they do not trust, even where somebody has clicked through their warning. So the hub gives the page something to ask
 * (`ask`), puts the answer into the worker's script alone, and pairs nobody who does not bring it.
 */
export class PairingProof {
  readonly #key = randomBytes(32);
  readonly #now: () => number;

  constructor(now: () => number = Date.now) {
    this.#now = now;
  }

  /** What a page is to ask its worker by, for ten minutes. */
  ask(): string {
    return `${this.#now() + LASTS_MS}.${randomBytes(12).toString('base64url')}`;
  }

  /** The script of the worker that answers this; null where it was not asked here, or too long ago. */
  script(ask: string): string | null {
    return this.#stands(ask)
      ? `addEventListener('message', ({ ports }) => ports[0]?.postMessage('${this.#answer(ask)}'));\n`
      : null;
  }

  /** Is that the answer? */
  holds(ask: string, proof: string): boolean {
    const right = Buffer.from(this.#answer(ask));
    const given = Buffer.from(proof);
    return this.#stands(ask) && given.length === right.length && timingSafeEqual(given, right);
  }

  #stands(ask: string): boolean {
    const until = /^(\d{1,15})\.[\w-]{16}$/.exec(ask)?.[1];
    return until !== undefined && this.#now() <= Number(until) && Number(until) <= this.#now() + LASTS_MS;
  }

  #answer(ask: string): string {
    return createHmac('sha256', this.#key).update(ask).digest('base64url');
  }
}
