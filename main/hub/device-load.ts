import type { FastifyReply, FastifyRequest } from 'fastify';
import { OVER_TLS } from '../network/limits.ts';

/** What one device may have open at once: what it asks in all, and of that what brings a large body. */
interface MostAtOnce {
  readonly asked: number;
  readonly large: number;
}

/** A browser asks by one connection, which takes no more; large bodies it sends one at a time, a few pages a few. */
const AT_ONCE: MostAtOnce = { asked: OVER_TLS.settings.maxConcurrentStreams, large: 8 };
/** A body up to so many bytes is none that is counted. */
const SMALL = 16 * 1024;

interface Load {
  asked: number;
  large: number;
}

/** What each device has asked and was not answered yet: all of it is held in memory, however many connections it makes. */
export class DeviceLoad {
  readonly #most: MostAtOnce;
  readonly #loads = new Map<string, Load>();

  constructor(most = AT_ONCE) {
    this.#most = most;
  }

  /** May this device ask this now? What it may counts until it is answered in full, or given up. */
  mayAsk(device: string, { method, routeOptions }: FastifyRequest, { raw }: FastifyReply): boolean {
    const large = method !== 'GET' && routeOptions.bodyLimit > SMALL ? 1 : 0;
    const load = this.#loads.get(device) ?? { asked: 0, large: 0 };
    if (load.asked >= this.#most.asked || load.large + large > this.#most.large) return false;
    load.asked += 1;
    load.large += large;
    this.#loads.set(device, load);
    raw.once('close', () => {
      load.asked -= 1;
      load.large -= large;
      if (load.asked === 0) this.#loads.delete(device);
    });
    return true;
  }
}
