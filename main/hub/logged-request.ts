import type { FastifyRequest } from 'fastify';

/** So much of what somebody asks for is written down: an address may be a hundred thousand letters long. */
const MOST_LETTERS = 200;

/** A request as it stands in the program's log. */
export function loggedRequest({ method, url, host, ip, socket }: FastifyRequest): object {
  return {
    method,
    url: url.slice(0, MOST_LETTERS),
    host: host.slice(0, MOST_LETTERS),
    remoteAddress: ip,
    remotePort: socket.remotePort,
  };
}
