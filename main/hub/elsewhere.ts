import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { type Endpoint, ENDPOINTS } from '#core/api/endpoints.ts';
import type { NetworkDesk } from '../network/network-desk.ts';
import { problem } from './problem.ts';
import { isFromElsewhere } from './who-asks.ts';

/** How long a browser may remember what it was allowed, in seconds. */
const REMEMBER_S = 600;

/** At which of the hub's addresses was it asked, as a page's origin? */
export function originAsked({ host }: Pick<FastifyRequest, 'host'>): string {
  return `https://${host.toLowerCase()}`;
}

/**
 * Is this asked by a page that a paired device got at another address of the hub? Such a page, kept by its browser when that
 * address is gone, may ask for what the table says and nothing else; a page from anywhere else is refused as ever.
 */
export function fromElsewhere(request: FastifyRequest, origin: string, { ways }: Pick<NetworkDesk, 'ways'>) {
  return (
    request.routeOptions.config.elsewhere === true && origin.startsWith('https://') && ways.knows(origin)
  );
}

/** Lets the page read the answer (Fetch standard, CORS protocol). Without credentials: no cookie goes with it. */
export function tellElsewhere(reply: FastifyReply, origin: string): void {
  reply.headers({ 'access-control-allow-origin': origin, vary: 'Origin' });
}

/** The token that such a page shows; null where it shows none. */
export function sendingToken({ headers }: FastifyRequest): string | null {
  return /^Bearer ([\w-]{43})$/i.exec(headers.authorization ?? '')?.[1] ?? null;
}

/** Browsers ask first whether a page from elsewhere may ask at all. */
export function answerPreflights(app: FastifyInstance): void {
  for (const [key, endpoint] of Object.entries<Endpoint>(ENDPOINTS)) {
    if (endpoint.elsewhere !== true) continue;
    const [method = '', path = ''] = key.split(' ');
    app.options(`/api${path}`, { config: { elsewhere: true } }, async (request, reply) => {
      if (!isFromElsewhere(request)) throw problem(405, 'api.method', { allowed: method });
      // Asked by browsers that tell a shop's network from the open one (Private Network Access, a draft, from memory).
      if (request.headers['access-control-request-private-network'] === 'true')
        reply.header('access-control-allow-private-network', 'true');
      return reply
        .headers({
          'access-control-allow-methods': method,
          'access-control-allow-headers': 'authorization, content-type, accept-language',
          'access-control-max-age': String(REMEMBER_S),
        })
        .code(204)
        .send();
    });
  }
}
