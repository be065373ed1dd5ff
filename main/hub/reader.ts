import { once } from 'node:events';
import type { Writable } from 'node:stream';
import type { AcceptedMark } from '#core/marks/mark.ts';
import { notToldYet } from './not-told-yet.ts';

/** A reader for whom so much waits is dropped; it comes back and asks from where it was. */
const MOST_WAITING = 1024 * 1024;
const MOST_PIECES = 5000;

/** One open stream. What happens while it is still told of older marks waits, so that all come in their order. */
export class Reader {
  readonly #out: Writable;
  #waiting: string[] | null = [];
  #waitingLength = 0;

  constructor(out: Writable) {
    this.#out = out;
  }

  /** Greets the reader, tells it what it missed, and from then on sends as things happen. */
  async begin(
    greeting: string,
    missed: AsyncIterable<AcceptedMark> | Iterable<AcceptedMark> | null,
  ): Promise<void> {
    this.#out.write(greeting);
    let told = 0;
    try {
      if (missed !== null)
        for await (const accepted of missed) {
          if (this.#out.destroyed || this.#out.writableEnded) return;
          told = accepted.seq;
          if (!this.#out.write(markEvent(accepted))) await roomOrEnd(this.#out);
        }
    } catch {
      this.#out.destroy();
    }
    // What came while it was found out what was missed may be among that.
    const waited = (this.#waiting ?? []).map((text) => notToldYet(text, told)).join('');
    this.#waiting = null;
    this.send(waited);
  }

  /**
   * Sends events, or keeps them until it has begun. Nothing at all is not even written: on HTTP/2 an empty text behind others
   * makes Node 20 send what lies in freed memory in their place.
   */
  send(text: string): void {
    if (text === '') return;
    if (this.#out.writableEnded || this.#out.destroyed) return;
    if (this.#waiting !== null) this.#wait(this.#waiting, text);
    else if (this.#out.writableLength > MOST_WAITING) this.#out.destroy();
    else this.#out.write(text);
  }

  #wait(waiting: string[], text: string): void {
    waiting.push(text);
    this.#waitingLength += text.length;
    if (this.#waitingLength <= MOST_WAITING && waiting.length <= MOST_PIECES) return;
    waiting.splice(0);
    this.#out.destroy();
  }

  end(): void {
    this.#out.end();
  }

  /** Ends it whether or not anybody reads what is written. */
  leave(): void {
    this.#out.destroy();
  }
}

/** Waits until the stream takes more, or is gone. */
async function roomOrEnd(out: Writable): Promise<void> {
  const gone = new AbortController();
  await Promise.race([once(out, 'drain', gone), once(out, 'close', gone)]).finally(() => gone.abort());
}

/** A mark as a stream tells it. */
export function markEvent(accepted: AcceptedMark): string {
  return `id: ${accepted.seq}\nevent: mark\ndata: ${JSON.stringify(accepted)}\n\n`;
}
