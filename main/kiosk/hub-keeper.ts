import { Budget } from './budget.ts';

/** A hub that was started, as whoever keeps it sees it. */
export interface RunningHub {
  /** Hears what it says on its standard output. */
  hear(listen: (text: string) => void): void;
  /** Hears that it has ended, and how, in a few words: "code 1", "SIGKILL". */
  ended(listen: (how: string) => void): void;
  end(): void;
}

export interface Keeping {
  /** Starts a hub on this port; null: on the one that it is told from outside. */
  readonly start: (port: string | null) => RunningHub;
  /** It listens at this address, each time that it was started. */
  readonly listens: (url: string) => void;
  /** The first one ended before it listened, and is not started again: what it says is for whoever starts it. */
  readonly neverListened: (how: string) => void;
  /** It died once too often within a minute, and stays ended until `again`. */
  readonly stopped: (how: string) => void;
  readonly now?: () => number;
}

/** The fifth death within a minute is the last. */
export const DEATHS = 5;
/** How long until the next try where the one before did not come to listen. */
const PAUSE_MS = 200;

/**
 * Keeps a hub running: one that dies is started anew, on the port that it had, so that the screens find it again. Five
 * deaths within a minute, and it is left ended until somebody asks for another try.
 */
export class HubKeeper {
  readonly #keeping: Keeping;
  readonly #budget = new Budget(DEATHS - 1);
  #hub: RunningHub | null = null;
  #port: string | null = null;
  #ending = false;

  constructor(keeping: Keeping) {
    this.#keeping = keeping;
    this.#start();
  }

  /** Another try after it was left ended; nothing happens while one runs. */
  again(): void {
    if (this.#hub !== null || this.#ending) return;
    this.#budget.renew();
    this.#start();
  }

  /** Ends it for good; true when there was one to end, which `over` will be told of. */
  end(over: () => void): boolean {
    this.#ending = true;
    if (this.#hub === null) return false;
    this.#hub.ended(over);
    this.#hub.end();
    return true;
  }

  #start(): void {
    const hub = this.#keeping.start(this.#port);
    this.#hub = hub;
    let said = '';
    let listening = false;
    hub.hear((text) => {
      if (listening) return;
      said += text;
      const url = /LISTENING (\S+)/.exec(said)?.[1];
      if (url === undefined) return;
      listening = true;
      this.#port = new URL(url).port;
      this.#keeping.listens(url);
    });
    hub.ended((how) => {
      this.#hub = null;
      if (this.#ending) return;
      if (this.#port === null) this.#keeping.neverListened(how);
      else if (!this.#budget.take((this.#keeping.now ?? Date.now)())) this.#keeping.stopped(how);
      else if (listening) this.#start();
      else setTimeout(() => this.#retry(), PAUSE_MS);
    });
  }

  #retry(): void {
    if (this.#hub === null && !this.#ending) this.#start();
  }
}
