import type { FastifyRequest } from 'fastify';
import type { StationSeen } from '#core/api/stations-api.ts';
import { STATIONS } from '#core/stages/stations.ts';
import type { NetworkDesk } from '../network/network-desk.ts';
import type { Store } from '../store/store.ts';
import type { Serve } from './serve.ts';
import type { PageSeen, StationsSeen } from './stations-seen.ts';
import { deviceOf, isOverNetwork } from './who-asks.ts';

/** PUT /screens, by which pages say what they show, and GET /stations, by which the board knows. */
export function stationRoutes(serve: Serve, store: Store, desk: NetworkDesk, seen: StationsSeen): void {
  serve('PUT /screens', async ({ body, request }) => {
    seen.hear(deviceOf(request)?.id ?? null, body);
    return { now: Date.now(), trust: isOverNetwork(request) ? trustPageFor(request, desk) : null };
  });

  serve('GET /stations', async () => {
    const names = new Map(desk.devices.all.map(({ id, name }) => [id, name]));
    const shown = seen.pages.flatMap((page) => {
      const device = page.owner === null ? null : names.get(page.owner);
      return device === undefined ? [] : [asSeen(page, device, store)];
    });
    const known = new Set(seen.pages.map(({ owner }) => owner));
    const silent = desk.state === 'off' ? [] : desk.devices.all.filter(({ id }) => !known.has(id));
    const absent = silent.map((device): StationSeen => {
      const { id, name, station, seen: last } = device;
      const clock = seen.clockOf(id);
      const since = new Date(last).toISOString();
      return { station, device: name, here: false, since, ...(clock === undefined ? {} : { clock }) };
    });
    return { stations: [...shown, ...absent].sort(inOrder) };
  });
}

/** Where a device gets the shop's certificate, at the address by which it asks. */
function trustPageFor({ host }: FastifyRequest, { addresses }: NetworkDesk): string | null {
  const same = addresses.find(({ screens }) => new URL(screens).host === host);
  return (same ?? addresses[0])?.trust ?? null;
}

/** What a page shows, with the names of what it names by its code. */
function asSeen({ station, here, since, shows }: PageSeen, device: string | null, store: Store): StationSeen {
  const { code, by, stage, unsent, clock } = shows;
  const now = { station, device, here, since: new Date(since).toISOString() };
  const kept = { ...(unsent === undefined ? {} : { unsent }), ...(clock === undefined ? {} : { clock }) };
  if (!here) return { ...now, ...kept };
  const known = code === undefined ? null : store.find(code);
  return {
    ...now,
    ...kept,
    ...(by === undefined ? {} : { by }),
    ...(code === undefined ? {} : { code }),
    ...(stage === undefined ? {} : { stage }),
    ...(known === null
      ? {}
      : {
          job: known.stored.summary.job,
          door: known.found.door.door,
          part: known.found.part.part,
        }),
  };
}

/** As a blank meets the stations, then by the devices' names; the shop computer first. */
function inOrder(a: StationSeen, b: StationSeen): number {
  return (
    STATIONS.indexOf(a.station) - STATIONS.indexOf(b.station) ||
    (a.device ?? '').localeCompare(b.device ?? '')
  );
}
