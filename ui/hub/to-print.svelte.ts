import { ask } from './client.ts';
import { live } from './live.svelte.ts';
import { TryAgain } from './try-again.ts';

/** How many stickers of each job are to be printed, as the hub counts them: asked for again whenever that may be another number. */
class ToPrint {
  #counts = $state.raw<ReadonlyMap<string, number>>(new Map());
  #asking = false;
  #again = false;
  readonly #later = new TryAgain(() => this.#look());

  of(job: string): number {
    return this.#counts.get(job) ?? 0;
  }

  /** To be called from an effect: it reads what the count hangs on. */
  follow(): void {
    void live.stickerNews;
    void this.#look();
  }

  async #look(): Promise<void> {
    this.#again = this.#asking;
    if (this.#asking) return;
    this.#asking = true;
    const answer = await ask('GET /stickers');
    this.#asking = false;
    if (answer.kind === 'ok') {
      this.#later.came();
      this.#counts = new Map(answer.value.jobs.map(({ id, toPrint }) => [id, toPrint]));
    } else this.#later.missed();
    if (this.#again) await this.#look();
  }
}

export const toPrint = new ToPrint();
