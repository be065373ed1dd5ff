import type { StationId } from '#core/stages/stations.ts';
import { screenMemory } from '../screen-memory.ts';
import { ask } from './client.ts';
import { ClockDifference } from './clock-difference.ts';
import { screenId } from './screen-id.ts';

/** What a station shows: who works there, and the part and stage whose set-up is on the screen. */
export interface Shown {
  readonly station: StationId;
  readonly by?: string;
  readonly code?: string;
  readonly stage?: string;
  readonly unsent: number;
}

/** What changes within this time is said at once. */
const TOGETHER_MS = 400;
/** How often the page says that it is there; the hub takes it for away after 40 s of silence. */
const SIGN_OF_LIFE_MS = 15_000;
/** By less than this no other clock is told of. */
const SAME_CLOCK_MS = 1000;
const TRUST = 'shoulderline.trust';

/** Tells the hub what this page shows, so that the board can say who is where; and learns by how much this device's clock is off. */
class ScreenShown {
  /** By how many milliseconds this device's clock is ahead of the hub's; null while it is not known. */
  clock = $state<number | null>(null);
  /** Where this device finds the shop's certificate; null at the hub's own machine. */
  trust = $state(screenMemory.getItem(TRUST) ?? '');
  #shown: Shown | null = null;
  #soon: ReturnType<typeof setTimeout> | null = null;
  #sending = false;
  #again = false;
  readonly #difference = new ClockDifference();

  /** Says from now on every quarter of a minute that this page is there. Gives what ends that. */
  start(): () => void {
    const beating = setInterval(() => this.say(), SIGN_OF_LIFE_MS);
    const seen = () => this.say();
    document.addEventListener('visibilitychange', seen);
    return () => {
      clearInterval(beating);
      document.removeEventListener('visibilitychange', seen);
    };
  }

  /** From now on this page shows that; null where it shows no station. */
  show(shown: Shown | null): void {
    this.#shown = shown;
    this.say();
  }

  /** Says in a moment what is shown then. */
  say(): void {
    this.#soon ??= setTimeout(() => {
      this.#soon = null;
      void this.#send();
    }, TOGETHER_MS);
  }

  async #send(): Promise<void> {
    this.#again = this.#sending;
    if (this.#sending) return;
    this.#sending = true;
    // What goes wrong is said again with the next sign of life.
    await this.#sendNow().catch(() => undefined);
    this.#sending = false;
    if (this.#again) this.say();
  }

  async #sendNow(): Promise<void> {
    const { clock } = this;
    // Behind another window, or with the glass dark, nobody sees it.
    const shown = document.hidden ? null : this.#shown;
    const began = Date.now();
    const answer = await ask('PUT /screens', {
      body: { screen: screenId, ...(shown ?? { station: null }), ...(clock === null ? {} : { clock }) },
    });
    if (answer.kind !== 'ok') return;
    const { now, trust } = answer.value;
    this.#difference.take(began, Date.now(), now, performance.now());
    const ahead = this.#difference.ahead;
    if (trust !== null && trust !== this.trust) {
      this.trust = trust;
      screenMemory.setItem(TRUST, trust);
    }
    if (ahead === null || (clock !== null && Math.abs(ahead - clock) < SAME_CLOCK_MS)) return;
    this.clock = ahead;
    this.say();
  }
}

export const screenShown = new ScreenShown();
