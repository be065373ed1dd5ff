import { ask } from './client.ts';
import { Followed } from './followed.ts';
import { live } from './live.svelte.ts';

/** How many stickers of each job are to be printed, as the hub counts them: asked for again whenever that may be another number. */
class ToPrint {
  #counts = $state.raw<ReadonlyMap<string, number>>(new Map());
  readonly #followed = new Followed(async () => {
    const answer = await ask('GET /stickers');
    if (answer.kind !== 'ok') return false;
    this.#counts = new Map(answer.value.jobs.map(({ id, toPrint }) => [id, toPrint]));
    return true;
  });

  of(job: string): number {
    return this.#counts.get(job) ?? 0;
  }

  /** To be called from an effect: it reads what the count hangs on. */
  follow(): void {
    void live.stickerNews;
    void this.#followed.look();
  }
}

export const toPrint = new ToPrint();
