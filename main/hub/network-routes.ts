import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Network } from '#core/api/network-api.ts';
import { MOST_DEVICES } from '../network/device-store.ts';
import type { NetworkDesk } from '../network/network-desk.ts';
import { addressSymbol, qrSymbol } from '../network/qr-symbol.ts';
import type { PinStore } from '../store/documents/pin-store.ts';
import type { Store } from '../store/store.ts';
import type { Announcements } from './events.ts';
import { PAIRING_PAGE, tellDevice } from './network-gate.ts';
import { problem } from './problem.ts';
import type { Serve } from './serve.ts';
import type { StationsSeen } from './stations-seen.ts';
import { deviceOf, isOverNetwork } from './who-asks.ts';

/** The shop's network: the office's switch, pairings and devices, and the two addresses by which a device is paired. */
export function networkRoutes(
  serve: Serve,
  store: Store,
  pin: PinStore,
  desk: NetworkDesk,
  announced: Announcements,
  screens: StationsSeen,
): void {
  serve('GET /pairing', async ({ request, reply }) => {
    const device = deviceOf(request);
    const { language } = store.shop.document.shop;
    reply.header('cache-control', 'no-store');
    return {
      paired: device === null ? null : { name: device.name, station: device.station },
      needed: isOverNetwork(request),
      ask: desk.proof.ask(),
      ...(language === undefined ? {} : { language }),
    };
  });

  serve('POST /pairing', async ({ body, request, reply }) => {
    if (!isOverNetwork(request)) throw problem(409, 'api.pairing-here');
    if (!desk.proof.holds(body.ask, body.proof)) throw problem(403, 'api.pairing-unproved');
    if (desk.devices.all.length >= MOST_DEVICES)
      throw problem(409, 'api.devices-full', { most: MOST_DEVICES });
    if (!desk.offers.take(body.secret, request.ip)) throw problem(401, 'api.pairing-wrong');
    const added = await desk.devices.add(body.name, body.station);
    if (added === null) throw problem(409, 'api.devices-full', { most: MOST_DEVICES });
    tellDevice(reply, added.token);
    return { name: added.device.name, station: added.device.station };
  });

  const told = (request: FastifyRequest): Network => {
    const here = deviceOf(request)?.id;
    return {
      state: desk.state,
      reason: desk.reason,
      told: desk.told,
      pin: pin.set && pin.unreadable === null,
      addresses: desk.addresses.map((each) => ({ ...each, symbol: addressSymbol(each.screens) })),
      named:
        desk.named === null
          ? null
          : { screens: desk.named.screens, symbol: addressSymbol(desk.named.screens) },
      fingerprint: desk.fingerprint,
      devices: desk.devices.all.map(({ id, name, station, since, seen }) => {
        const clock = screens.clockOf(id);
        return {
          id,
          name,
          station,
          since: new Date(since).toISOString(),
          seen: new Date(seen).toISOString(),
          here: id === here,
          online: screens.isOnline(id, seen),
          ...(clock === undefined ? {} : { clock }),
        };
      }),
    };
  };
  serve('GET /network', async ({ request }) => told(request));

  serve('PUT /network', async ({ body, request, reply }) => {
    if (desk.told) throw problem(409, 'api.network-told');
    if (body.on && (!pin.set || pin.unreadable !== null)) throw problem(409, 'api.network-no-pin');
    await desk.choose(body.on, isOverNetwork(request));
    settleAfter(desk, request, reply);
    return told(request);
  });

  serve('POST /network/offers', async () => {
    if (desk.state !== 'on') throw problem(409, 'api.network-off');
    const { token, code, until } = desk.offers.begin();
    return {
      code,
      until: new Date(until).toISOString(),
      at: desk.served.map(({ screens, trust }) => ({
        named: screens === desk.named?.screens,
        pairing: `${screens}${PAIRING_PAGE}`,
        pairingSymbol: qrSymbol(`${screens}${PAIRING_PAGE}#${token}`),
        trust,
        trustSymbol: trust === null ? null : qrSymbol(trust),
      })),
    };
  });

  serve('DELETE /network/devices/:id', async ({ params, request }) => {
    const { id } = params;
    try {
      if (!(await desk.revoke(id))) throw problem(404, 'api.device-unknown');
    } finally {
      if (!desk.devices.has(id)) {
        announced.endOf(id);
        screens.forget(id);
      }
    }
    return told(request);
  });
}

/** Whoever switches the network off over the network is answered before it goes. */
export function settleAfter(desk: NetworkDesk, request: FastifyRequest, { raw }: FastifyReply): void {
  if (isOverNetwork(request)) raw.once('close', () => void desk.settle());
}

/** The worker that a page is paired through: its script is given to a browser alone that asks for a worker's, which it does over a trusted certificate. */
export function pairingWorker(app: FastifyInstance, { proof }: NetworkDesk): void {
  app.get<{ Querystring: { ask?: unknown } }>(
    `${PAIRING_PAGE}/worker.js`,
    { config: { who: 'anyone' } },
    async ({ headers, query }, reply) => {
      const kind =
        headers['sec-fetch-dest'] ?? (headers['service-worker'] === 'script' ? 'serviceworker' : '');
      const script = typeof query.ask === 'string' ? proof.script(query.ask) : null;
      if (kind !== 'serviceworker' || script === null) throw problem(404, 'api.not-found');
      return reply.type('text/javascript; charset=utf-8').header('cache-control', 'no-store').send(script);
    },
  );
}
