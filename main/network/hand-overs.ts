import { hashOfToken, newToken } from './device-token.ts';

const LASTS_MS = 2 * 60_000;

/** Devices on their way from one of the hub's addresses to another, in memory alone: each once, within two minutes. */
export class HandOvers {
  readonly #now: () => number;
  readonly #under = new Map<string, { readonly hash: string; readonly until: number }>();

  constructor(now: () => number = Date.now) {
    this.#now = now;
  }

  /** What the page of this device shows where it comes to; what was given to it before is over. */
  begin(device: string): string {
    const token = newToken();
    this.#under.set(device, { hash: hashOfToken(token), until: this.#now() + LASTS_MS });
    return token;
  }

  /** The device that this was given to, once; null for whatever was not, is over, or was shown before. */
  take(token: string): string | null {
    const hash = hashOfToken(token);
    for (const [device, given] of this.#under) {
      if (this.#now() > given.until) this.#under.delete(device);
      else if (given.hash === hash) {
        this.#under.delete(device);
        return device;
      }
    }
    return null;
  }
}
