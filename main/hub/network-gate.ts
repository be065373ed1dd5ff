import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Device } from '../network/device-store.ts';
import type { NetworkDesk } from '../network/network-desk.ts';
import { DeviceLoad } from './device-load.ts';
import { sendingToken } from './elsewhere.ts';
import { problem } from './problem.ts';
import { cameFrom, isFromElsewhere } from './who-asks.ts';

/** A browser sends it over encrypted connections alone, to this very host, and lets no script read it. */
const COOKIE = '__Host-shoulderline-device';
/** As long as browsers keep a cookie at most (RFC 6265bis, a draft, from memory); it is given anew with each page. */
const KEEP_S = 400 * 86_400;
/** Where a device is paired. */
export const PAIRING_PAGE = '/pairing';
const STREAM = '/api/events';

/**
 * Lets in over the network who shows that it is a paired device. Whoever is not gets the page to be paired by, what that
 * page is made of, and its two addresses: what is said to be for anyone, and nothing else, be it there or not.
 */
export function gateNetwork(
  app: FastifyInstance,
  desk: Pick<NetworkDesk, 'devices' | 'ways' | 'admits' | 'shows'>,
): void {
  const load = new DeviceLoad();
  const letIn = (device: Device, request: FastifyRequest, reply: FastifyReply) => {
    // Streams are counted where they are opened.
    const counts = request.routeOptions.url !== STREAM;
    if (counts && !load.mayAsk(device.id, request, reply)) throw problem(429, 'api.asks-much');
    cameFrom(request, device);
  };
  app.addHook('onRequest', async (request, reply) => {
    if (!desk.admits) throw problem(403, 'api.network-shut');
    if (isFromElsewhere(request)) {
      const from = gateElsewhere(request, desk);
      if (from !== null) letIn(from, request, reply);
      return;
    }
    const token = tokenOf(request);
    const device = token === null ? null : deviceBy(token, desk);
    desk.shows(request.raw.socket, device?.id ?? null);
    if (token !== null && device !== null) {
      letIn(device, request, reply);
      if (isForPage(request)) tellDevice(reply, token);
      return;
    }
    if (request.routeOptions.config.who === 'anyone') return;
    if (isForPage(request)) return reply.redirect(PAIRING_PAGE, 303);
    throw problem(401, 'api.not-paired');
  });
}

/** A page that was got at another address shows its token: no cookie counts for it. Gives whose it is; null where that does not matter. */
function gateElsewhere(
  request: FastifyRequest,
  desk: Pick<NetworkDesk, 'devices' | 'ways' | 'shows'>,
): Device | null {
  const token = sendingToken(request);
  const id = token === null ? null : desk.ways.bySending(token, request.headers.origin ?? '');
  const device = id === null ? null : desk.devices.meet(id);
  desk.shows(request.raw.socket, device?.id ?? null);
  if (request.method === 'OPTIONS' || request.routeOptions.config.who === 'anyone') return null;
  if (device === null) throw problem(401, 'api.not-paired');
  return device;
}

/** Whose cookie is it: where it was paired, or at an address that it came to since? */
function deviceBy(token: string, { ways, devices }: Pick<NetworkDesk, 'devices' | 'ways'>): Device | null {
  const paired = devices.find(token);
  if (paired !== null) return paired;
  const id = ways.byCookie(token);
  return id === null ? null : devices.meet(id);
}

/** From now on this browser is told by the token, and by nothing else. */
export function tellDevice(reply: FastifyReply, token: string): void {
  reply.header(
    'set-cookie',
    `${COOKIE}=${token}; Path=/; Secure; HttpOnly; SameSite=Strict; Max-Age=${KEEP_S}`,
  );
}

function tokenOf({ headers }: FastifyRequest): string | null {
  return /(?:^|;\s*)__Host-shoulderline-device=([\w-]{43})(?:;|$)/.exec(headers.cookie ?? '')?.[1] ?? null;
}

/** Does a person open a page by it? */
function isForPage({ method, url, headers }: FastifyRequest): boolean {
  return method === 'GET' && !/^\/api(\/|\?|$)/.test(url) && (headers.accept ?? '').includes('text/html');
}
