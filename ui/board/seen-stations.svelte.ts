import type { StationSeen } from '#core/api/stations-api.ts';
import { ask } from '../hub/client.ts';
import { Followed } from '../hub/followed.ts';
import { live } from '../hub/live.svelte.ts';

/** How the stations stand, as the hub sees them: asked for again whenever it says that something has changed. */
class SeenStations {
  all = $state.raw<readonly StationSeen[]>([]);
  readonly #followed = new Followed(async () => {
    const answer = await ask('GET /stations');
    if (answer.kind !== 'ok') return false;
    this.all = answer.value.stations;
    return true;
  });

  /** To be called from an effect: it reads what the stations hang on. */
  follow(): void {
    void [live.stationNews, live.connected];
    void this.#followed.look();
  }
}

export const seenStations = new SeenStations();
