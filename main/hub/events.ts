import type { Writable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Beat } from '#core/api/office-api.ts';
import type { Store } from '../store/store.ts';
import { HEADERS } from './guard-requests.ts';
import { keptTags } from './kept-tags.ts';
import { LastMark, type MarkPlace } from './last-mark.ts';
import { marksAfter } from './marks-after.ts';
import { OpenedStreams, tooMany } from './opened-streams.ts';
import { problem } from './problem.ts';
import { markEvent, Reader } from './reader.ts';
import type { Serve } from './serve.ts';

/** Something that stations hear of besides marks. */
export interface Announcement {
  readonly event: 'job' | 'print' | 'shop' | 'stations';
  readonly data: unknown;
}

/** What the other routes tell the stations through. */
export interface Announcer {
  tell(announcement: Announcement): void;
  /** Ends every stream: the readers come back and look at everything anew. */
  endAll(): void;
}

/** The streams that are open on one of the hub's servers. */
interface Streams {
  send(text: string): void;
  endAll(): void;
  /** Ends those of one device. */
  endOf(device: string): void;
}

/** What every stream is told, on whichever of the hub's servers it was opened. */
export interface Announcements extends Announcer {
  /** What a stream is greeted with: a beat that says too from where on it is told of marks. */
  greeting(resumed: boolean): Promise<string>;
  join(streams: Streams): void;
  leave(streams: Streams): void;
  /** A device is paired no more: its streams end at once. */
  endOf(device: string): void;
  /** Tells nothing more. */
  close(): void;
}

const BEAT_MS = 1000;

/** A reader who lost its stream comes back after one second at the mean, none at the same moment as all others. */
const [RETRY_MS, RETRY_SPREAD_MS] = [500, 1000];

/**
 * Marks as they come, and a beat every second that says too whether the hub is well, and by their tags whether what people
 * write is as it was. `screens` names the screens that are served.
 */
export function announcements(store: Store, well: () => boolean, screens?: string): Announcements {
  const all = new Set<Streams>();
  let gathered = '';
  // Marks that shared a flush are told in one piece.
  const sendAll = (text: string) => {
    if (gathered === '')
      queueMicrotask(() => {
        const whole = gathered;
        gathered = '';
        all.forEach((streams) => streams.send(whole));
      });
    gathered += text;
  };
  const last = new LastMark(store);
  const beat = (more: Pick<Beat, 'greeting'> = {}) => {
    const data: Beat = { seq: store.lastSeq, ok: well(), ...keptTags(store), screens, ...more };
    return `event: beat\ndata: ${JSON.stringify(data)}\n\n`;
  };
  const ended = store.onMark((accepted) => {
    if (all.size > 0) sendAll(markEvent(accepted));
  });
  const beating = setInterval(() => sendAll(beat()), BEAT_MS);
  return {
    async greeting(resumed) {
      const retry = RETRY_MS + Math.floor(Math.random() * RETRY_SPREAD_MS);
      const known = await last.now();
      return `retry: ${retry}\n${beat({ greeting: { resumed, last: known } })}`;
    },
    tell: ({ event, data }) => sendAll(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`),
    endAll() {
      last.forget();
      all.forEach((streams) => streams.endAll());
    },
    endOf: (device) => all.forEach((streams) => streams.endOf(device)),
    join: (streams) => void all.add(streams),
    leave: (streams) => void all.delete(streams),
    close() {
      clearInterval(beating);
      ended();
      last.close();
    },
  };
}

/** Whose streams they are. */
interface Whose {
  /** Which device asks over the network; null at the hub's own machine. */
  readonly deviceOf: (request: FastifyRequest) => string | null;
  /** Told that a device has opened a stream, on a screen that names itself; what it gives is called when that has ended. */
  readonly opened: (device: string | null, screen: string | null) => () => void;
}

/** GET /events: every mark from the last one that the reader has, then as they come. */
export function eventRoutes(
  app: FastifyInstance,
  serve: Serve,
  store: Store,
  announced: Announcements,
  { deviceOf, opened }: Whose,
): void {
  const readers = new Map<Reader, string | null>();
  const streams: Streams = {
    send: (text) => readers.forEach((_device, reader) => reader.send(text)),
    endAll: () => readers.forEach((_device, reader) => reader.end()),
    endOf: (device) =>
      readers.forEach((of, reader) => {
        if (of === device) reader.end();
      }),
  };
  announced.join(streams);

  const openings = new OpenedStreams();

  serve('GET /events', async ({ query, request, reply }) => {
    const last = numberIn(request.headers['last-event-id']);
    const known = last === null ? placeIn(query) : null;
    const device = deviceOf(request);
    if (device !== null && !openings.mayOpen(device)) throw problem(429, 'api.streams-often');
    reply.hijack();
    reply.raw.writeHead(200, {
      ...HEADERS,
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      ...(request.raw.httpVersionMajor === 1 ? { connection: 'keep-alive' } : {}),
    });
    // Who waits for its greeting knows that there is somebody.
    reply.raw.flushHeaders();
    const out = outOf(reply);
    const reader = new Reader(out);
    readers.set(reader, device);
    if (device !== null) tooMany(readers, device)?.leave();
    const ended = opened(device, query.screen ?? null);
    const gone = () => {
      readers.delete(reader);
      ended();
    };
    out.on('close', gone);
    out.on('error', gone);
    const missed = known === null ? null : await marksAfter(store, known);
    await reader.begin(
      await announced.greeting(last !== null || missed !== null),
      last === null ? missed : store.since(last),
    );
    return reply;
  });

  app.addHook('preClose', async () => {
    announced.leave(streams);
    streams.endAll();
  });
}

/** A number as a reader says it; null where it is none. */
function numberIn(text: unknown): number | null {
  return typeof text === 'string' && /^\d{1,15}$/.test(text) ? Number(text) : null;
}

/** The last mark that a reader knows, where it says so. */
function placeIn({
  after,
  mark,
}: {
  readonly after?: string | undefined;
  readonly mark?: string | undefined;
}): MarkPlace | null {
  const seq = numberIn(after);
  return seq === null || mark === undefined ? null : { seq, mark };
}

/** Where an answer is written to: on HTTP/2 its stream, as what stands for it there is never destroyed. */
function outOf({ raw }: FastifyReply): Writable {
  return 'stream' in raw ? (raw.stream as Writable) : raw;
}
