import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

/** A page that is served on this machine only, on a port of its own, until it is closed. */
export interface ServedPage {
  readonly url: string;
  close(): void;
}

/** Serves the page, and does what somebody taps on it, by the names of its buttons. Needs no disk: that may be what failed. */
export function servePage(
  html: string,
  acts: Readonly<Record<string, () => void>> = {},
): Promise<ServedPage> {
  const asked = new Map(Object.entries(acts).map(([name, act]) => [`/${name}`, act]));
  return new Promise((served, failed) => {
    let url = '';
    const server = createServer((request, response) => {
      const own = `http://${request.headers.host ?? ''}` === url;
      const act = asked.get(request.url ?? '');
      if (own && request.method === 'GET' && request.url === '/') {
        response.writeHead(200, { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' });
        response.end(html);
      } else if (act !== undefined && own && request.method === 'POST' && request.headers.origin === url) {
        response.writeHead(204).end();
        act();
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
