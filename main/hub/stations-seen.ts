import type { ScreenShows } from '#core/api/stations-api.ts';
import type { StationId } from '#core/stages/stations.ts';

/** Whose a page is: a paired device's, by its id; null at the hub's own machine. */
export type Owner = string | null;

/** A page at a station, as it was last heard of. */
export interface PageSeen {
  readonly owner: Owner;
  readonly station: StationId;
  readonly shows: ScreenShows;
  /** Does it show the station now? */
  readonly here: boolean;
  /** Since when, in milliseconds since 1970. */
  readonly since: number;
}

interface Page extends PageSeen {
  readonly heard: number;
}

/** A page says every 15 s that it is there; after this long without it its device is taken to be cut off. */
const SILENT_MS = 40_000;
const LOOK_MS = 5000;
/** News are told so often at most. */
const TELL_MS = 1000;
/** Where somebody at the hub's own machine once looked at a station is no news the day after. */
const DAY_MS = 86_400_000;
/** So many pages are held, and so many of one owner, so that no device crowds out the others. */
const MOST = 200;
const MOST_OF_ONE = 12;

/**
 * What the pages of the shop show, as they say themselves: who is at which station, with what, and since when one is away. A
 * page is away once its last stream has ended, once nothing is heard of it, or once it says that nobody sees it. All this is
 * in memory alone: after a restart of the hub the pages say it anew.
 */
export class StationsSeen {
  readonly #now: () => number;
  readonly #tell: () => void;
  /** What was heard last stands last. */
  readonly #pages = new Map<string, Page>();
  readonly #streams = new Map<string, number>();
  /** By how much the clock of each device is ahead. */
  readonly #clocks = new Map<string, number>();
  readonly #looking: ReturnType<typeof setInterval>;
  #telling: ReturnType<typeof setTimeout> | null = null;
  #told = -Infinity;

  /** `tell` is called after something has changed, once a second at most. */
  constructor(tell: () => void, now: () => number = Date.now) {
    this.#tell = tell;
    this.#now = now;
    this.#looking = setInterval(() => this.look(), LOOK_MS);
    this.#looking.unref();
  }

  /** The pages at stations; where two of one owner show the same, the one heard last. */
  get pages(): readonly PageSeen[] {
    const last = new Map<string, PageSeen>();
    for (const page of this.#pages.values()) last.set(`${page.owner ?? ''}/${page.station}`, page);
    return [...last.values()];
  }

  /** How many pages are held. */
  get held(): number {
    return this.#pages.size;
  }

  /** By how many milliseconds the clock of this device is ahead of the hub's; undefined where it has not said so. */
  clockOf(device: string): number | undefined {
    return this.#clocks.get(device);
  }

  /** Is a page of this device open, whatever it shows, that was `heard` of a moment ago? */
  isOnline(device: string, heard: number): boolean {
    return this.#streams.has(keyOf(device, null)) && this.#now() - heard <= SILENT_MS;
  }

  /** A page says what it shows. */
  hear(owner: Owner, shows: ScreenShows): void {
    const key = keyOf(owner, shows.screen);
    const before = this.#pages.get(key);
    const now = this.#now();
    if (owner !== null && shows.clock !== undefined) this.#clocks.set(owner, shows.clock);
    const { station } = shows;
    if (station === null) return before === undefined ? undefined : this.#leave(key, before, now);
    const stays = before?.here === true && before.station === station;
    this.#pages.delete(key);
    this.#pages.set(key, {
      owner,
      station,
      shows,
      here: true,
      since: stays ? before.since : now,
      heard: now,
    });
    this.#settle(owner, key);
    if (!stays || JSON.stringify(before.shows) !== JSON.stringify(shows)) this.#news();
  }

  /** A page of this owner has opened a stream; gives what is to be called when that has ended. */
  opened(owner: Owner, screen: string | null): () => void {
    const keys = [keyOf(owner, null), ...(screen === null ? [] : [keyOf(owner, screen)])];
    for (const key of keys) this.#streams.set(key, (this.#streams.get(key) ?? 0) + 1);
    let open = true;
    return () => {
      if (!open) return;
      open = false;
      for (const key of keys) this.#ended(key);
    };
  }

  #ended(key: string): void {
    const left = (this.#streams.get(key) ?? 1) - 1;
    if (left > 0) return void this.#streams.set(key, left);
    this.#streams.delete(key);
    const page = this.#pages.get(key);
    if (page?.here === true) this.#goAway(key, page, this.#now());
  }

  /** A device is paired no more: nothing of it is held. */
  forget(device: string): void {
    this.#clocks.delete(device);
    for (const [key, { owner }] of this.#pages) if (owner === device) this.#pages.delete(key);
    this.#news();
  }

  /** Looks which pages nothing is heard of any more. */
  look(): void {
    const now = this.#now();
    for (const [key, page] of this.#pages)
      if (page.here && now - page.heard > SILENT_MS) this.#goAway(key, page, page.heard);
      else if (!page.here && page.owner === null && now - page.since > DAY_MS) this.#pages.delete(key);
  }

  close(): void {
    clearInterval(this.#looking);
    if (this.#telling !== null) clearTimeout(this.#telling);
  }

  /** A page shows another screen now, or none. What a device showed last is told on; at the hub's own machine somebody only looked at it. */
  #leave(key: string, page: Page, now: number): void {
    if (page.owner !== null) {
      if (page.here) this.#goAway(key, page, now);
      return;
    }
    this.#pages.delete(key);
    this.#news();
  }

  #goAway(key: string, page: Page, since: number): void {
    this.#pages.set(key, { ...page, here: false, since });
    this.#settle(page.owner, key);
    this.#news();
  }

  /** Where an owner is away is told only while it is not there elsewhere, and of a device the last place alone. Keeps to the limits. */
  #settle(owner: Owner, latest: string): void {
    const page = this.#pages.get(latest);
    const mine = [...this.#pages].filter(([, each]) => each.owner === owner);
    const isHere = (station: StationId) =>
      mine.some(([, each]) => each.here && (owner !== null || each.station === station));
    for (const [key, each] of mine) {
      const replaced = key !== latest && (owner !== null || each.station === page?.station);
      if (!each.here && (replaced || isHere(each.station))) this.#pages.delete(key);
    }
    for (const [key] of mine.slice(0, -MOST_OF_ONE)) this.#pages.delete(key);
    for (const [key] of [...this.#pages].slice(0, -MOST)) this.#pages.delete(key);
  }

  #news(): void {
    if (this.#telling !== null) return;
    const wait = Math.max(0, this.#told + TELL_MS - performance.now());
    this.#telling = setTimeout(() => {
      this.#telling = null;
      this.#told = performance.now();
      this.#tell();
    }, wait);
    this.#telling.unref();
  }
}

function keyOf(owner: Owner, screen: string | null): string {
  return `${owner ?? ''}/${screen ?? ''}`;
}
