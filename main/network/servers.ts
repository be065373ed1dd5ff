import { createServer, type IncomingMessage, type RequestListener, type Server } from 'node:http';
import { createSecureServer, type Http2SecureServer, type Http2ServerRequest } from 'node:http2';
import type { Duplex } from 'node:stream';
import { IDLE_MS, OVER_TLS, TRUST_REQUEST_MS } from './limits.ts';

/** What a server over TLS shows who it is by: its key, and its certificate with that of the authority behind it, as PEM. */
export interface Shown {
  readonly key: string;
  readonly cert: string;
}

/** Serves the screens by HTTP/2 and by HTTP/1.1 on one port, over TLS; others listen for it. */
export function secureServer(shown: Shown, headerLimit: number): Http2SecureServer {
  const server = createSecureServer({
    ...OVER_TLS,
    settings: { ...OVER_TLS.settings, maxHeaderListSize: headerLimit },
    ...shown,
  });
  // What Node's server for HTTP/1.1 reads of the one that hands a connection to it.
  Object.assign(server, { maxHeaderSize: headerLimit });
  // Of connections by HTTP/1.1, and of sessions by HTTP/2.
  server.setTimeout(IDLE_MS);
  server.on('session', (session) => session.setTimeout(IDLE_MS, () => session.destroy()));
  lookAtTimes(server);
  server.on('sessionError', () => undefined);
  server.on('tlsClientError', (_error: Error, socket: Duplex) => socket.destroy());
  return server;
}

/** Serves the page with the shop's certificate, not encrypted; others listen for it. */
export function plainServer(page: RequestListener): Server {
  const server = createServer({ requestTimeout: TRUST_REQUEST_MS }, page);
  server.setTimeout(IDLE_MS);
  lookAtTimes(server);
  return server;
}

/** Of what has come in already nothing more is even read. */
export function endAtOnce(request: IncomingMessage | Http2ServerRequest): void {
  if ('stream' in request) request.stream.session?.destroy();
  else request.destroy();
}

/** Node looks at how long a request by HTTP/1.1 takes to come in only once its server listens, which ours leaves to others. */
function lookAtTimes(server: Http2SecureServer | Server): void {
  server.emit('listening');
}
