import type { FastifyInstance, FastifyRequest } from 'fastify';
import { tellElsewhere } from './elsewhere.ts';
import { problem } from './problem.ts';
import { cameFromElsewhere } from './who-asks.ts';

/** Headers on every answer: nothing from elsewhere, nothing inline, no frames but our own. */
export const HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy':
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; manifest-src 'self'; frame-src 'self' blob:; object-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'self'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), microphone=(), geolocation=()',
};

/** Over the network a page may also send what it kept to the hub at an address that nobody knows yet. */
const OVER_NETWORK: Readonly<Record<string, string>> = {
  ...HEADERS,
  'content-security-policy': (HEADERS['content-security-policy'] ?? '').replace(
    "connect-src 'self'",
    "connect-src 'self' https:",
  ),
};

/**
 * What comes from outside is held here, before any route sees it: the host asked for (421), the page it comes from
 * and the site that makes a browser ask (403), and that a body is JSON (415). `scheme` is how the hub's own pages are got here,
 * `mayAsk` lets a page of another origin ask for what it says.
 */
export function guardRequests(
  app: FastifyInstance,
  hosts: () => readonly string[],
  scheme: 'http' | 'https',
  mayAsk: (request: FastifyRequest, origin: string) => boolean = () => false,
): void {
  const headers = scheme === 'https' ? OVER_NETWORK : HEADERS;
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(headers);
    // On HTTP/2 there is no header of this name.
    const { host } = request;
    if (!hosts().includes(host.toLowerCase())) throw problem(421, 'api.host', { host: host.slice(0, 100) });
    const origin = request.headers.origin;
    if (origin !== undefined && !hosts().some((each) => origin.toLowerCase() === `${scheme}://${each}`)) {
      if (!mayAsk(request, origin)) throw problem(403, 'api.origin', { origin: origin.slice(0, 100) });
      cameFromElsewhere(request);
      tellElsewhere(reply, origin);
    } else if (isMadeByAnotherSite(request)) throw problem(403, 'api.cross-site');
    const writes = request.method === 'POST' || request.method === 'PUT';
    const type = request.headers['content-type'] ?? '';
    if (writes && !/^application\/json\s*(;|$)/i.test(type)) throw problem(415, 'api.media-type');
  });
}

const OTHER_SITES = new Set(['cross-site', 'same-site']);

/**
 * Does a browser say that a page of another site, or of another port of this machine, makes it ask (Fetch Metadata Request
 * Headers, W3C working draft, from memory)? Whoever follows a link to one of the pages gets it: it does no work.
 */
function isMadeByAnotherSite({ headers, method, url }: FastifyRequest): boolean {
  if (!OTHER_SITES.has(headers['sec-fetch-site'] ?? '')) return false;
  const toPage =
    method === 'GET' &&
    headers['sec-fetch-mode'] === 'navigate' &&
    headers['sec-fetch-dest'] === 'document' &&
    !/^\/api(\/|\?|$)/.test(url);
  return !toPage;
}

/** The names under which a loopback address is asked for. */
export function loopbackHosts(port: number): string[] {
  return [`127.0.0.1:${port}`, `localhost:${port}`, `[::1]:${port}`];
}
