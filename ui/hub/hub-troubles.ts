import type { Trouble } from '#core/api/office-api.ts';
import { ask } from './client.ts';

/** How often a hub that is not well is asked what is wrong. */
const LOOK_AGAIN_MS = 5000;

/** What the hub has to tell everybody: lost, damaged, or in the way of recording. Asked for while it says that it is not well. */
export class HubTroubles {
  readonly #told: (troubles: readonly Trouble[]) => void;
  #lastLook = -LOOK_AGAIN_MS;

  constructor(told: (troubles: readonly Trouble[]) => void) {
    this.#told = told;
  }

  /** The hub has said whether it is well. */
  hear(well: boolean): void {
    if (well) {
      this.#told([]);
      this.#lastLook = -LOOK_AGAIN_MS;
      return;
    }
    if (performance.now() - this.#lastLook < LOOK_AGAIN_MS) return;
    this.#lastLook = performance.now();
    void ask('GET /health').then((answer) => {
      if (answer.kind === 'ok') this.#told(answer.value.troubles);
    });
  }
}
