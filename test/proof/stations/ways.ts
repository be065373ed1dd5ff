import { type ClientHttp2Session, connect } from 'node:http2';
import { Agent, type ClientRequest, type IncomingMessage, request } from 'node:http';
import { Agent as SecureAgent, request as secureRequest } from 'node:https';
import { connect as connectSocket } from 'node:net';
import { connect as connectSecure } from 'node:tls';

/** What is asked of the hub: an address, and what goes with it. */
export interface Asking {
  readonly method: string;
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** An answer as its pieces come. */
export interface Answering {
  readonly status: number;
  readonly pieces: AsyncIterable<Buffer>;
  /** Leaves it. */
  leave(): void;
}

/** How a browser speaks to the hub: all that it asks goes through one of these. */
export interface Way {
  ask(asking: Asking): Promise<Answering>;
  close(): void;
}

/** By which protocol, from which address, and what is shown. */
export interface WayTold {
  readonly by: 'http' | 'https' | 'h2';
  readonly url: string;
  readonly from: string;
  readonly ca: string;
  readonly cookie: string;
}

/** HTTP/1.1 as browsers speak it: up to six connections, kept. */
function wayByOne({ by, url, from, ca, cookie }: WayTold): Way {
  const { hostname, port } = new URL(url);
  const kept = { keepAlive: true, maxSockets: 6 };
  const agent = by === 'http' ? new Agent(kept) : new SecureAgent({ ...kept, ca });
  return {
    ask: ({ method, path, headers, body }) =>
      new Promise((answered, failed) => {
        const asked: ClientRequest = (by === 'http' ? request : secureRequest)(
          {
            hostname,
            port,
            method,
            path,
            agent,
            localAddress: from,
            headers: {
              ...headers,
              ...(cookie === '' ? {} : { cookie }),
              ...(body === undefined ? {} : { 'content-type': 'application/json' }),
            },
          },
          (answer: IncomingMessage) =>
            answered({ status: answer.statusCode ?? 0, pieces: answer, leave: () => asked.destroy() }),
        );
        asked.on('error', failed);
        asked.end(body);
      }),
    close: () => agent.destroy(),
  };
}

/** HTTP/2 as browsers speak it: one connection for all, made anew when it is gone. */
function wayByTwo({ url, from, ca, cookie }: WayTold): Way {
  const { hostname, port } = new URL(url);
  let session: ClientHttp2Session | null = null;
  const open = () => {
    if (session !== null && !session.closed && !session.destroyed) return session;
    session = connect(url, {
      createConnection: () =>
        connectSecure({
          host: hostname,
          socket: connectSocket({ host: hostname, port: Number(port), localAddress: from }),
          ca,
          ALPNProtocols: ['h2'],
        }),
    });
    session.on('error', () => undefined);
    return session;
  };
  return {
    ask: ({ method, path, headers, body }) =>
      new Promise((answered, failed) => {
        const asked = open().request({
          ':method': method,
          ':path': path,
          ...headers,
          ...(cookie === '' ? {} : { cookie }),
          ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        });
        asked.on('error', failed);
        asked.on('close', () => failed(new Error('the stream is closed')));
        asked.on('response', (told) =>
          answered({
            status: told[':status'] ?? 0,
            pieces: asked,
            leave: () => asked.destroy(),
          }),
        );
        asked.end(body);
      }),
    close: () => session?.destroy(),
  };
}

export function wayOf(told: WayTold): Way {
  return told.by === 'h2' ? wayByTwo(told) : wayByOne(told);
}
