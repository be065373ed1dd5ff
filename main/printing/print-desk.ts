import { randomUUID } from 'node:crypto';
import type { PrintState } from '#core/api/prints-api.ts';
import { type Language, say } from '#core/words/say.ts';
import { type Paper, type PrintSystem, refused, type Refused } from './printer.ts';
import { tellRefusal } from './tell-refusal.ts';

/** A paper on its way: what it is made of is counted while it is made. */
export interface PrintJob<M extends { readonly paper: Paper }> {
  readonly printer: string;
  /** Makes the paper. It calls `progress` now and then, and stops when that throws or the signal comes. */
  make(progress: Progress, signal: AbortSignal): Promise<({ readonly ok: true } & M) | Refused>;
  /** Called once the paper has left the printer, never before, and never for one that has not. */
  printed(made: M): Promise<void>;
}

/** Tells how much is made, lets others have their turn, and throws once the print is cancelled. */
export type Progress = (made: number, of: number) => Promise<void>;

class Cancelled extends Error {}

/** How far a print is; what is to be said of it, as its code and words in the language of who asks. */
interface Reached extends Omit<PrintState, 'code' | 'message'> {
  readonly told?: { readonly code: string; in(language: Language): string };
}

/** So many may be on their way for one device: until it is made, a print holds all that it is made of. */
const MOST_OF_ONE = 8;
/** How many prints are remembered after they ended. */
const MOST_KEPT = 200;

/** All prints of this run of the program: each is made, sent, and followed until it is out of the printer or is not. */
export class PrintDesk {
  readonly #system: PrintSystem;
  readonly #prints = new Map<
    string,
    {
      state: Reached;
      readonly owner: string | null;
      readonly stop: AbortController;
      readonly over: Promise<void>;
    }
  >();

  constructor(system: PrintSystem) {
    this.#system = system;
  }

  list(): ReturnType<PrintSystem['list']> {
    return this.#system.list();
  }

  /** May this paired device print once more, while so many of its prints are on their way? */
  mayStart(device: string): boolean {
    const its = [...this.#prints.values()].filter(({ owner, state }) => owner === device && isOpen(state));
    return its.length < MOST_OF_ONE;
  }

  /** Begins a print and returns its id at once; `owner` is the paired device that asked for it, if one did. */
  start<M extends { readonly paper: Paper }>(job: PrintJob<M>, owner: string | null = null): string {
    const id = randomUUID();
    const stop = new AbortController();
    const tell = (state: Reached) => {
      const print = this.#prints.get(id);
      if (print !== undefined) print.state = state;
    };
    this.#prints.set(id, {
      state: { state: 'making', made: 0, of: 0 },
      owner,
      stop,
      // Begins after the entry is in the map, so that nothing it tells is lost.
      over: Promise.resolve().then(() => this.#print(job, stop.signal, tell)),
    });
    for (const [old, print] of this.#prints)
      if (this.#prints.size > MOST_KEPT && !isOpen(print.state)) this.#prints.delete(old);
    return id;
  }

  /** How far a print is, told in a language. */
  state(id: string, language: Language): PrintState | undefined {
    const print = this.#prints.get(id);
    if (print === undefined) return undefined;
    const { told, ...reached } = print.state;
    return told === undefined ? reached : { ...reached, code: told.code, message: told.in(language) };
  }

  /** Takes a print back: while it is made at once, from the queue as soon as the queue answers. False for one that is over. */
  cancel(id: string): boolean {
    const print = this.#prints.get(id);
    if (print === undefined || !isOpen(print.state)) return false;
    print.stop.abort();
    return true;
  }

  /** Takes back all that is on its way, and waits until it is. */
  async close(): Promise<void> {
    for (const { stop } of this.#prints.values()) stop.abort();
    await Promise.all([...this.#prints.values()].map(({ over }) => over));
  }

  async #print<M extends { readonly paper: Paper }>(
    job: PrintJob<M>,
    signal: AbortSignal,
    tell: (state: Reached) => void,
  ): Promise<void> {
    let count = { made: 0, of: 0 };
    const progress: Progress = async (made, of) => {
      count = { made, of };
      tell({ state: 'making', ...count });
      await new Promise((turn) => setImmediate(turn));
      if (signal.aborted) throw new Cancelled();
    };
    const end = (why: Refused) =>
      tell({
        state: why.code === 'cancelled' ? 'cancelled' : 'failed',
        ...count,
        told: { code: why.code, in: (language) => tellRefusal(why, language) },
      });
    try {
      const made = await job.make(progress, signal);
      if (!made.ok) return end(made);
      tell({ state: 'sending', ...count });
      const sent = await this.#system.print(job.printer, made.paper, signal);
      if (!sent.ok) return end(sent);
      const { stickers } = made.paper;
      const laid = { ...count, ...(stickers === undefined ? {} : { stickers }) };
      try {
        await job.printed(made);
        tell({ state: 'printed', ...laid });
      } catch (error) {
        const reason = reasonOf(error);
        const told = {
          code: 'not-recorded',
          in: (language: Language) => say('print.not-recorded', { reason }, language),
        };
        tell({ state: 'printed', ...laid, told });
      }
    } catch (error) {
      end(
        error instanceof Cancelled || signal.aborted
          ? refused('cancelled')
          : refused('not-made', { reason: reasonOf(error) }),
      );
    }
  }
}

function isOpen({ state }: Pick<PrintState, 'state'>): boolean {
  return state === 'making' || state === 'sending';
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
