import type { ServerResponse } from 'node:http';
import { once } from 'node:events';
import type { FastifyInstance } from 'fastify';
import type { AcceptedMark } from '#core/marks/mark.ts';
import type { Store } from '../store/store.ts';
import { HEADERS } from './guard-requests.ts';
import type { Serve } from './serve.ts';

/** Something that stations hear of besides marks. */
export interface Announcement {
  readonly event: 'job' | 'print' | 'shop';
  readonly data: unknown;
}

/** What the other routes tell the stations through. */
export interface Announcer {
  tell(announcement: Announcement): void;
  /** Ends every stream: the readers come back and look at everything anew. */
  endAll(): void;
}

const BEAT_MS = 1000;
/** A reader for whom so much waits is dropped; it comes back and asks from where it was. */
const MOST_WAITING = 1024 * 1024;
const MOST_PIECES = 5000;

/** GET /events: every mark from the last one that the reader has, then as they come, with a beat every second that says too whether the hub is well. */
export function eventRoutes(
  app: FastifyInstance,
  serve: Serve,
  store: Store,
  well: () => boolean,
): Announcer {
  const readers = new Set<Reader>();
  let gathered = '';
  // Marks that shared a flush are told in one piece.
  const sendAll = (text: string) => {
    if (gathered === '')
      queueMicrotask(() => {
        const all = gathered;
        gathered = '';
        readers.forEach((reader) => reader.send(all));
      });
    gathered += text;
  };
  const beatText = () => `event: beat\ndata: {"seq":${store.lastSeq},"ok":${well()}}\n\n`;
  const ended = store.onMark((accepted) => {
    if (readers.size > 0) sendAll(markEvent(accepted));
  });
  const beat = setInterval(() => sendAll(beatText()), BEAT_MS);

  serve('GET /events', async ({ request, reply }) => {
    const last = /^\d{1,15}$/.exec(String(request.headers['last-event-id'] ?? ''))?.[0];
    reply.hijack();
    reply.raw.writeHead(200, {
      ...HEADERS,
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      connection: 'keep-alive',
    });
    const reader = new Reader(reply.raw);
    readers.add(reader);
    reply.raw.on('close', () => readers.delete(reader));
    reply.raw.on('error', () => readers.delete(reader));
    await reader.begin(`retry: 1000\n${beatText()}`, last === undefined ? null : store.since(Number(last)));
    return reply;
  });

  const endAll = () => readers.forEach((reader) => reader.end());
  app.addHook('preClose', async () => {
    clearInterval(beat);
    ended();
    endAll();
  });
  return {
    tell: ({ event, data }) => sendAll(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`),
    endAll,
  };
}

/** One open stream. What happens while it is still told of older marks waits, so that all come in their order. */
class Reader {
  readonly #out: ServerResponse;
  #waiting: string[] | null = [];
  #waitingLength = 0;

  constructor(out: ServerResponse) {
    this.#out = out;
  }

  /** Greets the reader, tells it what it missed, and from then on sends as things happen. */
  async begin(greeting: string, missed: AsyncIterable<AcceptedMark> | null): Promise<void> {
    this.#out.write(greeting);
    try {
      if (missed !== null)
        for await (const accepted of missed) {
          if (this.#out.destroyed) return;
          if (!this.#out.write(markEvent(accepted))) await roomOrEnd(this.#out);
        }
    } catch {
      this.#out.destroy();
    }
    const waited = this.#waiting ?? [];
    this.#waiting = null;
    waited.forEach((text) => this.send(text));
  }

  send(text: string): void {
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
}

/** Waits until the stream takes more, or is gone. */
async function roomOrEnd(out: ServerResponse): Promise<void> {
  const gone = new AbortController();
  await Promise.race([once(out, 'drain', gone), once(out, 'close', gone)]).finally(() => gone.abort());
}

function markEvent(accepted: AcceptedMark): string {
  return `id: ${accepted.seq}\nevent: mark\ndata: ${JSON.stringify(accepted)}\n\n`;
}
