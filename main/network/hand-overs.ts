import { hashOfToken, newToken } from './device-token.ts';

const LASTS_MS = 2 * 60_000;
/** Tabs of one browser go each by its own; of more than so many the first is over. */
const MOST_OF_ONE = 8;

/** Devices on their way from one of the hub's addresses to another, in memory alone: by each token once, within two minutes. */
export class HandOvers {
  readonly #now: () => number;
  readonly #under = new Map<string, { readonly device: string; readonly until: number }>();

  constructor(now: () => number = Date.now) {
    this.#now = now;
  }

  /** What a page of this device shows where it comes to. */
  begin(device: string): string {
    const now = this.#now();
    for (const [hash, { until }] of this.#under) if (now > until) this.#under.delete(hash);
    const mine = [...this.#under].filter(([, given]) => given.device === device);
    for (const [hash] of mine.slice(0, Math.max(0, mine.length + 1 - MOST_OF_ONE))) this.#under.delete(hash);
    const token = newToken();
    this.#under.set(hashOfToken(token), { device, until: now + LASTS_MS });
    return token;
  }

  /** The device that this was given to, once; null for whatever was not, is over, or was shown before. */
  take(token: string): string | null {
    const hash = hashOfToken(token);
    const given = this.#under.get(hash);
    this.#under.delete(hash);
    return given === undefined || this.#now() > given.until ? null : given.device;
  }
}
