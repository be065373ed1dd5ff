import type { FastifyRequest } from 'fastify';
import type { Device } from '../network/device-store.ts';
import type { NetworkDesk } from '../network/network-desk.ts';
import { originAsked } from './elsewhere.ts';
import { tellDevice } from './network-gate.ts';
import { problem } from './problem.ts';
import type { Serve } from './serve.ts';
import { deviceOf, isFromElsewhere } from './who-asks.ts';

/** How a device goes on where the hub is got at another address: its page sends what it kept, and comes after it. */
export function movedRoutes(serve: Serve, desk: NetworkDesk): void {
  serve('GET /moved', async ({ request }) => {
    const device = deviceOf(request)?.id ?? null;
    return {
      addresses: desk.served.map(({ screens }) => screens),
      device,
      sending: device !== null && desk.ways.sends(device, originAsked(request)),
    };
  });

  serve('POST /moved/token', async ({ request, reply }) => {
    const { id } = paired(request);
    reply.header('cache-control', 'no-store');
    return { device: id, token: await desk.ways.newSending(id, originAsked(request)) };
  });

  serve('POST /moved/proof', async ({ body, request }) => {
    const { origin = '' } = request.headers;
    const proof = desk.ways.proof(body.device, origin, body.nonce, originAsked(request));
    if (proof === null) throw problem(404, 'api.device-unknown');
    return { proof };
  });

  serve('POST /moved/leave', async ({ request, reply }) => {
    const { id } = paired(request);
    if (!isFromElsewhere(request)) throw problem(409, 'api.moved-here');
    reply.header('cache-control', 'no-store');
    return { token: desk.handOvers.begin(id) };
  });

  serve('POST /moved/arrive', async ({ body, request, reply }) => {
    if (!desk.proof.holds(body.ask, body.proof)) throw problem(403, 'api.pairing-unproved');
    const id = desk.handOvers.take(body.token);
    const device = id === null ? null : desk.devices.meet(id);
    if (device === null) throw problem(401, 'api.moved-over');
    tellDevice(reply, await desk.ways.newCookie(device.id, originAsked(request)));
    return { name: device.name, station: device.station };
  });
}

/** The device that asks; refuses (409) the hub's own machine, which none is. */
function paired(request: FastifyRequest): Device {
  const device = deviceOf(request);
  if (device === null) throw problem(409, 'api.pairing-here');
  return device;
}
