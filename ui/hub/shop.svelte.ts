import { shopAnswer, type Shop } from '#core/api/shop-api.ts';
import { type Rounding, USUAL_ROUNDING } from '#core/length/reading.ts';
import { ask } from './client.ts';
import { screenMemory } from '../screen-memory.ts';
import { TryAgain } from './try-again.ts';

const REMEMBERED = 'shoulderline.shop';
const PLAIN = { prefix: '', suffix: '' };

/** What the shop has said of itself: its people, how values are shown, what a scanner sends, how wide each screen is. */
class KnownShop {
  now = $state.raw<Shop | null>(remembered());

  readonly #again = new TryAgain(() => this.reload());
  /** It was asked for and has not come since. */
  #missing = false;

  /** The hub is there again: what did not come is asked for once more, however often that was tried before. */
  hopeful(): void {
    this.#again.came();
    if (this.#missing) void this.reload();
  }

  /** Asks the hub. Without an answer the last one counts, over a reload too, and it is asked again after a moment. */
  async reload(): Promise<void> {
    this.#missing = true;
    const answer = await ask('GET /shop');
    if (answer.kind === 'ok') this.take(answer.value);
    else this.#again.missed();
  }

  take(shop: Shop): void {
    this.#missing = false;
    this.#again.came();
    this.now = shop;
    screenMemory.setItem(REMEMBERED, JSON.stringify(shop));
  }

  get people(): Shop['people'] {
    return this.now?.people ?? [];
  }

  get rounding(): Rounding {
    return this.now?.rounding ?? USUAL_ROUNDING;
  }

  get scanner(): Shop['scanner'] {
    return this.now?.scanner ?? PLAIN;
  }

  screenWidthMm(station: string): number | undefined {
    return this.now?.stations[station]?.screenWidthMm;
  }
}

function remembered(): Shop | null {
  try {
    const read = shopAnswer.safeParse(JSON.parse(screenMemory.getItem(REMEMBERED) ?? 'null'));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}

export const shop = new KnownShop();
