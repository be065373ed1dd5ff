import fastifyStatic from '@fastify/static';
import fastify, {
  type FastifyError,
  type FastifyInstance,
  type FastifyReply,
  type FastifyRequest,
} from 'fastify';
import { existsSync } from 'node:fs';
import type { Logger } from 'pino';
import { MOST_CODES_TEXT } from '#core/api/endpoints.ts';
import { openApi } from '#core/api/openapi.ts';
import type { PrintDesk } from '../printing/print-desk.ts';
import type { ElsewhereBackups } from '../store/archive/elsewhere.ts';
import type { Restoring } from '../store/archive/restore.ts';
import { type BackupServices, backupRoutes } from './backup-routes.ts';
import { binRoutes } from './bin-routes.ts';
import { guardRequests } from './guard-requests.ts';
import { answerError, answerErrors } from './errors.ts';
import { type Announcements, eventRoutes } from './events.ts';
import { answerPreflights, fromElsewhere } from './elsewhere.ts';
import { briefHealth, fullHealth, type HealthSources } from './health.ts';
import { jobRoutes } from './job-routes.ts';
import { loggedRequest } from './logged-request.ts';
import { markRoutes } from './mark-routes.ts';
import { movedRoutes } from './moved-routes.ts';
import type { NetworkDesk, OverNetwork } from '../network/network-desk.ts';
import { gateNetwork } from './network-gate.ts';
import { networkRoutes, pairingWorker } from './network-routes.ts';
import type { OfficeAccess } from './office-access.ts';
import { paperRoutes } from './paper-routes.ts';
import { pinRoutes } from './pin-routes.ts';
import { printRoutes } from './print-routes.ts';
import { screenRoutes } from './screen-routes.ts';
import { serveOn } from './serve.ts';
import type { ShellLine } from '../printing/shell-line.ts';
import type { WorkDesk } from '../work/work-desk.ts';
import { stockRoutes } from './stock-routes.ts';
import { shopRoutes } from './shop-routes.ts';
import { stationRoutes } from './station-routes.ts';
import type { StationsSeen } from './stations-seen.ts';
import { deviceOf } from './who-asks.ts';

/** A job file may have 8 MiB; a request around it a little more. */
const BODY_LIMIT = 8 * 1024 * 1024 + 64 * 1024;
/** How long a request may take to come in, whatever its size. Answers and streams take as long as they like. */
const REQUEST_MS = 10 * 60_000;

/** Bytes of a request's address and headers at most. */
export const HEADER_LIMIT = MOST_CODES_TEXT + 16 * 1024;

export interface ServiceParts extends HealthSources {
  readonly elsewhere: ElsewhereBackups;
  readonly restore: Restoring;
  readonly shell: ShellLine | null;
  readonly desk: PrintDesk;
  /** Where plans, stickers and papers are made. */
  readonly work: WorkDesk;
  readonly network: NetworkDesk;
  /** Who may do the office's work, and what streams are told: the same on each of the hub's servers. */
  readonly access: OfficeAccess;
  readonly announced: Announcements;
  /** What the pages of the shop show, on whichever server they were heard. */
  readonly seen: StationsSeen;
  /** The folder of the built screens; without it the API is served alone. */
  readonly ui?: string;
  readonly logger: Logger;
}

/**
 * The hub's addresses over its store, ready to listen. `hosts` are the names under which it may be asked for. With a server
 * `over` the network it answers paired devices there, by HTTP/2 and HTTP/1.1; without one, whoever is at this machine.
 */
export async function buildService(
  parts: ServiceParts,
  hosts: () => readonly string[],
  over?: OverNetwork,
): Promise<{ readonly app: FastifyInstance }> {
  const { store, pin, version, ui, access, announced, network } = parts;
  const app = over === undefined ? hereAlone(parts) : overNetwork(parts, over);
  if (over === undefined) guardRequests(app, hosts, 'http');
  else {
    guardRequests(app, hosts, 'https', (request, origin) => fromElsewhere(request, origin, network));
    gateNetwork(app, network);
  }
  app.addHook('onRequest', async () => {
    const why = parts.held.whyLost();
    if (why !== null) throw await why;
  });
  answerErrors(app);
  await app.register(
    async (api) => {
      const serve = serveOn(api, access);
      const announcer = announced;
      eventRoutes(api, serve, store, announced, {
        deviceOf: (request) => deviceOf(request)?.id ?? null,
        opened: (device, screen) => parts.seen.opened(device, screen),
      });
      jobRoutes(serve, store, announcer, parts.work, version);
      binRoutes(serve, store, announcer);
      markRoutes(serve, store);
      paperRoutes(serve, store, announcer, parts.work);
      stockRoutes(serve, store);
      printRoutes(serve, store, parts.desk, announcer, parts.work);
      shopRoutes(serve, store, announcer);
      stationRoutes(serve, store, network, parts.seen);
      pinRoutes(serve, store, pin, access, parts.shell, network);
      movedRoutes(serve, network);
      networkRoutes(serve, store, pin, network, announced, parts.seen);
      await backupRoutes(api, serve, access, { ...parts, announcer } satisfies BackupServices);
      serve('GET /health', async ({ request }) =>
        access.isOpen(request) ? fullHealth(parts) : briefHealth(parts),
      );
      serve('POST /troubles/known', async () => ({ known: await store.troublesKnown() }));
      serve('GET /openapi.json', async () => openApi(version));
    },
    { prefix: '/api' },
  );
  if (over !== undefined) {
    pairingWorker(app, network);
    answerPreflights(app);
  }
  if (ui !== undefined && existsSync(ui)) {
    await app.register(fastifyStatic, { root: ui, serve: false });
    screenRoutes(app, ui);
  }
  return { app };
}

/** What each of the hub's servers is made with. */
function asUsual(parts: ServiceParts) {
  return {
    loggerInstance: parts.logger.child({}, { serializers: { req: loggedRequest } }),
    bodyLimit: BODY_LIMIT,
    requestTimeout: REQUEST_MS,
    forceCloseConnections: true,
    exposeHeadRoutes: false,
    routerOptions: { maxParamLength: 200 },
    frameworkErrors: (error: FastifyError, request: unknown, reply: unknown) =>
      void answerError(error, request as FastifyRequest, reply as FastifyReply),
  } as const;
}

function hereAlone(parts: ServiceParts): FastifyInstance {
  return fastify({ ...asUsual(parts), http: { maxHeaderSize: HEADER_LIMIT } }) as unknown as FastifyInstance;
}

function overNetwork(parts: ServiceParts, { server, mayAsk }: OverNetwork): FastifyInstance {
  return fastify({
    ...asUsual(parts),
    http2: true,
    https: { allowHTTP1: true },
    serverFactory: (handler) =>
      server.on('request', (request, answer) => {
        if (mayAsk(request)) handler(request, answer);
      }),
  }) as unknown as FastifyInstance;
}
