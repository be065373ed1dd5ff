import { readHubOrigin } from '#core/api/hub-origin.ts';
import { say } from '#core/words/say.ts';
import { ask } from '../hub/client.ts';
import { sendTo } from '../hub/elsewhere.ts';
import { live } from '../hub/live.svelte.ts';
import { route } from '../route.svelte.ts';
import { keepKnown, type Known, known } from './known.ts';
import { learn } from './learn.ts';
import { type Found, whatIsAt } from './proves.ts';

/** So long the hub is waited for at this address before it is looked for elsewhere, and so often from then on. */
const WAIT_MS = 20_000;
const AGAIN_MS = 30_000;
/** Stations do not all look at the same moment. */
const SPREAD_MS = 10_000;
/** A browser that has not gone there by then does not. */
const GOING_MS = 15_000;

/**
 * What becomes of this page when its hub is got at another address: it stays where it is, looks at the addresses that it
 * knows and at one that a person tells it, sends what it kept to the hub there, and goes after it once nothing is left.
 */
class Moved {
  /** Has the hub been away from this address for long? */
  long = $state(false);
  /** Where it was found; null while it was not. */
  at = $state<string | null>(null);
  /** What came of the address that a person told, in words. */
  said = $state('');
  leaving = $state(false);
  #timer: ReturnType<typeof setTimeout> | null = null;
  /** Counts how often the hub came and went: what was begun before is not gone on with. */
  #turn = 0;

  /** Follows whether the hub answers at this address. */
  follow(away: boolean): void {
    this.#turn += 1;
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    if (away && known() !== null) {
      this.#timer = setTimeout(() => void this.#look(), WAIT_MS);
      return;
    }
    this.long = false;
    this.at = null;
    this.said = '';
    sendTo(null);
    if (!away) void learn().catch(() => undefined);
  }

  async #look(): Promise<void> {
    const turn = this.#turn;
    this.long = true;
    const now = known();
    if (now !== null) await this.#lookAt(now.addresses, now);
    if (turn === this.#turn)
      this.#timer = setTimeout(() => void this.#look(), AGAIN_MS + Math.random() * SPREAD_MS);
  }

  /** Looks what is at these addresses; where the hub is at one of them it is sent what is kept here. */
  async #lookAt(origins: readonly string[], now: Known): Promise<readonly Found[]> {
    const turn = this.#turn;
    const found = await Promise.all(origins.map((origin) => whatIsAt(origin, now)));
    // What is found too late changes nothing: the hub is back here.
    if (turn !== this.#turn) return found;
    const origin = origins[found.indexOf('hub')];
    if (origin !== undefined) {
      keepKnown({ ...now, addresses: [origin] });
      sendTo({ origin, token: now.token });
      await live.outbox.send();
      if (turn === this.#turn) this.at = origin;
    } else if (this.at !== null && origins.includes(this.at)) {
      this.at = null;
      sendTo(null);
    }
    const revoked = origins[found.indexOf('revoked')];
    if (revoked !== undefined) this.said = say('moved.revoked', { address: new URL(revoked).host });
    return found;
  }

  /** What is wrong with an address as typed; null where it can be looked at. */
  readonly wrong = (text: string): string | null =>
    readHubOrigin(text, location.port) === null ? say('moved.form') : null;

  /** Takes an address that was scanned or typed while the hub is away, and looks there. False for what is none. */
  hear(text: string): boolean {
    const origin = readHubOrigin(text, location.port);
    const now = known();
    if (!this.long || origin === null || now === null) return false;
    void this.#told(origin, now);
    return true;
  }

  async #told(origin: string, now: Known): Promise<void> {
    const address = new URL(origin).host;
    this.said = say('moved.looking', { address });
    const [found = 'nothing'] = await this.#lookAt([origin], now);
    this.said = found === 'hub' ? '' : say(`moved.${found}`, { address });
  }

  /** Goes after the hub, with what lets this device in there. What is not sent yet stays kept here. */
  async leave(): Promise<void> {
    const [origin, token] = [this.at, known()?.token];
    if (origin === null || token === undefined || this.leaving) return;
    this.leaving = true;
    const left = await ask('POST /moved/leave', { body: {}, to: { origin, token } });
    if (left.kind !== 'ok' || !this.long) {
      this.leaving = false;
      this.at = null;
      return;
    }
    const here = route();
    const to = here.screen === 'station' ? `/station/${here.station}` : location.pathname;
    const behind = new URLSearchParams({ moved: left.value.token, to });
    // No way back leads here: what is at this address is away.
    location.replace(`${origin}/pairing#${behind.toString()}`);
    setTimeout(() => (this.leaving = false), GOING_MS);
  }
}

export const moved = new Moved();
