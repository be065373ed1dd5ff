import { Pace } from '../network/pace.ts';

/** A device has one for each of its pages, and perhaps some of pages that are gone. */
const MOST_STREAMS = 24;
/** All its pages come back at once, and again where they have to; each may be told a long log. */
const OPENED = { most: 48, perSecond: 4 };

/** How quickly each device opens streams. */
export class OpenedStreams {
  readonly #now: () => number;
  readonly #paces = new Map<string, Pace>();

  /** `now` is in milliseconds, of a clock that nobody sets. */
  constructor(now: () => number = () => performance.now()) {
    this.#now = now;
  }

  /** May this device open one more now? */
  mayOpen(device: string): boolean {
    for (const [other, pace] of this.#paces) if (other !== device && pace.isFull) this.#paces.delete(other);
    const pace = this.#paces.get(device) ?? new Pace(OPENED, this.#now);
    this.#paces.set(device, pace);
    return pace.take();
  }
}

/** The oldest of a device's streams, where it has too many; `streams` are all, the oldest first, each with its device. */
export function tooMany<T>(streams: ReadonlyMap<T, string | null>, device: string): T | null {
  const its = [...streams].filter(([, of]) => of === device);
  return its.length > MOST_STREAMS ? (its[0]?.[0] ?? null) : null;
}
