import { jobEvent } from '#core/api/jobs-api.ts';
import { acceptedMark } from '#core/api/marks-api.ts';
import { type Beat, beat } from '#core/api/office-api.ts';
import type { AcceptedMark } from '#core/marks/mark.ts';
import { addressOf } from './address.ts';
import { screenId } from './screen-id.ts';

/** What is heard from the hub's stream. */
export interface Hears {
  /** The stream is there. Resumed: nothing was missed since it was there before; else all is to be looked at anew. */
  readonly begun: (resumed: boolean) => void;
  readonly beat: (beat: Beat) => void;
  readonly mark: (accepted: AcceptedMark) => void;
  readonly job: (id: string) => void;
  readonly print: () => void;
  readonly shop: () => void;
  /** Something may stand otherwise with the stations. */
  readonly stations: () => void;
  /** It broke off, or could not be had; another is asked for soon. */
  readonly broken: () => void;
  /** Nothing was heard for longer than a hub is silent. */
  readonly silent: () => void;
}

/** The hub beats every second; after this long without a word it is away, so that it is said within three seconds. */
const SILENT_MS = 2250;
const LOOK_MS = 250;
/** A connection may be gone without a word, or never be made: after this long another stream is asked for. */
const GIVE_UP_MS = 6000;
/** How long is waited at the mean before another stream is asked for, at first and at most: all screens are back within five seconds of their hub, and never all at the same moment. */
const [FIRST_MS, MOST_MS] = [500, 2500];
const GROWS = 1.6;

/** A moment. The clock that nobody sets may stand still while a device sleeps, and the other may be set back: the longer time counts. */
class Since {
  readonly #date = Date.now();
  readonly #steady = performance.now();

  /** Milliseconds from then to now. */
  get ms(): number {
    return Math.max(Date.now() - this.#date, performance.now() - this.#steady);
  }
}

/** The hub's stream of events, asked for anew whenever it is gone, from the last mark on that it told. */
export class HubStream {
  readonly #hears: Hears;
  #events: EventSource | null = null;
  #heard = new Since();
  #asked = new Since();
  #tries = 0;
  #waits = false;
  #greeted = false;
  /** The last mark that was told, or what the greeting named as such. */
  #last: { readonly seq: number; readonly mark: string } | null = null;

  constructor(hears: Hears) {
    this.#hears = hears;
  }

  open(): void {
    this.#heard = new Since();
    this.#ask();
    setInterval(() => this.#look(), LOOK_MS);
  }

  #ask(): void {
    this.#waits = false;
    this.#greeted = false;
    this.#asked = new Since();
    const from = this.#last === null ? {} : { after: String(this.#last.seq), mark: this.#last.mark };
    const query = { screen: screenId, ...from };
    const events = new EventSource(addressOf('GET /events', { query }));
    this.#events = events;
    const hear = (name: string, take: (data: unknown) => void) =>
      events.addEventListener(name, ({ data }: MessageEvent<unknown>) => {
        if (this.#events !== events) return;
        this.#heard = new Since();
        take(data);
      });
    hear('beat', (data) => this.#beat(data));
    hear('mark', (data) => {
      const read = acceptedMark.safeParse(parsed(data));
      if (!read.success) return;
      this.#last = { seq: read.data.seq, mark: read.data.mark.id };
      this.#hears.mark(read.data);
    });
    hear('job', (data) => {
      const read = jobEvent.safeParse(parsed(data));
      if (read.success) this.#hears.job(read.data.id);
    });
    hear('print', () => this.#hears.print());
    hear('shop', () => this.#hears.shop());
    hear('stations', () => this.#hears.stations());
    events.addEventListener('error', () => {
      if (this.#events === events) this.#again();
    });
  }

  #beat(data: unknown): void {
    const heard = readBeat(data);
    if (!this.#greeted) {
      const { resumed, last } = heard.greeting ?? { resumed: false, last: null };
      this.#greeted = true;
      this.#tries = 0;
      if (!resumed) this.#last = last;
      this.#hears.begun(resumed);
    }
    this.#hears.beat(heard);
  }

  #look(): void {
    const heard = this.#heard.ms;
    if (heard > SILENT_MS) this.#hears.silent();
    if (!this.#waits && Math.min(heard, this.#asked.ms) > GIVE_UP_MS) this.#again();
  }

  #again(): void {
    this.#events?.close();
    this.#events = null;
    this.#waits = true;
    const mean = Math.min(MOST_MS, FIRST_MS * GROWS ** this.#tries);
    this.#tries += 1;
    setTimeout(() => this.#ask(), mean * (0.5 + Math.random()));
    this.#hears.broken();
  }
}

const ofScreens = beat.pick({ screens: true });

/** A beat of another form is one too, and says at least which screens the hub has. */
function readBeat(data: unknown): Beat {
  const json = parsed(data);
  const read = beat.safeParse(json);
  return read.success ? read.data : { seq: 0, ...ofScreens.safeParse(json).data };
}

function parsed(data: unknown): unknown {
  try {
    return JSON.parse(String(data));
  } catch {
    return null;
  }
}
