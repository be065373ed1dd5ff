import { StoreBusy } from '../store/files/file-port.ts';
import type { Bench } from './thread.ts';

/** So much may wait; who asks for more is told to come back. */
const MOST_WAITING = 200;

/** Whoever asked for it is gone, or took it back. */
export class NotWanted extends Error {}

interface Waiting {
  readonly signal: AbortSignal;
  readonly begin: (bench: Bench) => Promise<unknown>;
  readonly failed: (error: unknown) => void;
}

/** How long a bench stays, in milliseconds: with nothing to do, and with what nobody wants any more. */
export interface Stays {
  readonly idle: number;
  readonly unwanted: number;
}

/** Work done one after another on one bench, which is there while there is work, and a while longer. */
export class Lane {
  readonly #open: () => Bench;
  readonly #stays: Stays;
  readonly #waiting: Waiting[] = [];
  #bench: Bench | null = null;
  #busy = false;
  #closing: ReturnType<typeof setTimeout> | null = null;

  constructor(open: () => Bench, stays: Stays) {
    this.#open = open;
    this.#stays = stays;
  }

  /** Waits for its turn and does it; an abort takes it out, or ends it where it has begun and goes on for longer than it may. */
  take<T>(signal: AbortSignal, work: (bench: Bench) => Promise<T>): Promise<T> {
    if (signal.aborted) return Promise.reject(new NotWanted());
    if (this.#waiting.length >= MOST_WAITING)
      return Promise.reject(new StoreBusy('as much is being made as can be; try again in a while'));
    return new Promise<T>((done, failed) => {
      const waiting: Waiting = {
        signal,
        begin(bench) {
          signal.removeEventListener('abort', out);
          return work(bench).then(done);
        },
        failed,
      };
      const out = () => {
        const at = this.#waiting.indexOf(waiting);
        if (at < 0) return;
        this.#waiting.splice(at, 1);
        failed(new NotWanted());
      };
      signal.addEventListener('abort', out, { once: true });
      this.#waiting.push(waiting);
      this.#next();
    });
  }

  #next(): void {
    if (this.#busy) return;
    const next = this.#waiting.shift();
    if (next === undefined) return this.#idle();
    if (this.#closing !== null) clearTimeout(this.#closing);
    this.#closing = null;
    this.#busy = true;
    const bench = (this.#bench ??= this.#open());
    let ending: ReturnType<typeof setTimeout> | undefined;
    const stop = () => {
      ending = setTimeout(() => void this.#drop(bench), this.#stays.unwanted);
    };
    next.signal.addEventListener('abort', stop, { once: true });
    next
      .begin(bench)
      .catch((error: unknown) => {
        // What failed may have left its bench in pieces: the next begins on a fresh one.
        void this.#drop(bench);
        next.failed(next.signal.aborted ? new NotWanted() : error);
      })
      .finally(() => {
        next.signal.removeEventListener('abort', stop);
        clearTimeout(ending);
        this.#busy = false;
        this.#next();
      });
  }

  #idle(): void {
    if (this.#bench === null || this.#closing !== null) return;
    const bench = this.#bench;
    this.#closing = setTimeout(() => void this.#drop(bench), this.#stays.idle);
    this.#closing.unref();
  }

  async #drop(bench: Bench): Promise<void> {
    if (this.#bench === bench) this.#bench = null;
    await bench.end();
  }

  /** Ends what is being done, and refuses what waits. Settles when nothing is left of it. */
  async close(): Promise<void> {
    for (const { failed } of this.#waiting.splice(0)) failed(new NotWanted());
    if (this.#closing !== null) clearTimeout(this.#closing);
    if (this.#bench !== null) await this.#drop(this.#bench);
  }
}
