import type { FastifyInstance } from 'fastify';
import type { ServerResponse } from 'node:http';
import type { AcceptedMark } from '#core/marks/mark.ts';
import type { Store } from '../store/store.ts';

/** Something that stations hear of besides marks. */
export interface Announcement {
  readonly event: 'job' | 'shop';
  readonly data: unknown;
}
export type Announce = (announcement: Announcement) => void;

const BEAT_MS = 1000;
/** A reader this far behind is dropped; it comes back and asks from where it was. */
const MOST_BUFFERED = 8 * 1024 * 1024;

/** GET /events: every mark from the last one that the reader has, then as they come, with a beat every second. */
export function eventRoutes(app: FastifyInstance, store: Store): Announce {
  const readers = new Set<ServerResponse>();
  const send = (reader: ServerResponse, text: string) => {
    if (reader.writableLength > MOST_BUFFERED) reader.destroy();
    else reader.write(text);
  };
  const sendAll = (text: string) => readers.forEach((reader) => send(reader, text));
  const ended = store.onMark((accepted) => sendAll(markEvent(accepted)));
  const beat = setInterval(() => sendAll(`event: beat\ndata: {"seq":${store.lastSeq}}\n\n`), BEAT_MS);

  app.get('/events', (request, reply) => {
    const last = /^\d{1,15}$/.exec(String(request.headers['last-event-id'] ?? ''))?.[0];
    reply.hijack();
    const reader = reply.raw;
    reader.writeHead(200, {
      'content-type': 'text/event-stream; charset=utf-8',
      'cache-control': 'no-store',
      connection: 'keep-alive',
      'x-content-type-options': 'nosniff',
    });
    reader.write(`retry: 1000\nevent: beat\ndata: {"seq":${store.lastSeq}}\n\n`);
    if (last !== undefined)
      for (const accepted of store.since(Number(last))) reader.write(markEvent(accepted));
    readers.add(reader);
    reader.on('close', () => readers.delete(reader));
  });

  app.addHook('preClose', async () => {
    clearInterval(beat);
    ended();
    readers.forEach((reader) => reader.end());
  });
  return ({ event, data }) => sendAll(`event: ${event}\ndata: ${JSON.stringify(data)}\n\n`);
}

function markEvent(accepted: AcceptedMark): string {
  return `id: ${accepted.seq}\nevent: mark\ndata: ${JSON.stringify(accepted)}\n\n`;
}
