import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A page that is served on this machine only, on a port of its own, until it is closed. */
export interface ServedPage {
  readonly url: string;
  close(): void;
}

/** Serves the page, and tells when somebody on it asks for another try. Needs no disk: that may be what failed. */
export function servePage(html: string, again: () => void): Promise<ServedPage> {
  return new Promise((served, failed) => {
    let url = '';
    const server = createServer((request, response) => {
      const own = `http://${request.headers.host ?? ''}` === url;
      if (own && request.method === 'GET' && request.url === '/') {
        response.writeHead(200, { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' });
        response.end(html);
      } else if (
        own &&
        request.method === 'POST' &&
        request.url === '/again' &&
        request.headers.origin === url
      ) {
        response.writeHead(204).end();
        again();
      } else response.writeHead(404).end();
    });
    server.once('error', failed);
    server.listen(0, '127.0.0.1', () => {
      // An address that was listened on is a port.
      const { port } = server.address() as AddressInfo;
      url = `http://127.0.0.1:${port}`;
      served({
        url,
        close: () => {
          server.close();
          server.closeAllConnections();
        },
      });
    });
  });
}
