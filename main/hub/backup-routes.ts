import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { Readable } from 'node:stream';
import { networkPart } from '../network/archived-network.ts';
import { archiveLines } from '../store/archive/archive-lines.ts';
import type { ElsewhereBackups } from '../store/archive/elsewhere.ts';
import type { Backups } from '../store/archive/backups.ts';
import type { Origin } from '../store/archive/read-archive.ts';
import type { Restoring } from '../store/archive/restore.ts';
import type { NetworkPart } from '../store/archive/network-part.ts';
import type { FilePort } from '../store/files/file-port.ts';
import type { Store } from '../store/store.ts';
import type { Announcer } from './events.ts';
import { inTime } from './in-time.ts';
import type { OfficeAccess } from './office-access.ts';
import { problem } from './problem.ts';
import { type GivenBy, type Serve, serveOn } from './serve.ts';
import { isOverNetwork } from './who-asks.ts';

export interface BackupServices {
  readonly store: Store;
  readonly backups: Backups;
  readonly elsewhere: ElsewhereBackups;
  readonly restore: Restoring;
  readonly announcer: Announcer;
  readonly version: string;
  readonly port: FilePort;
  /** The data folder. */
  readonly data: string;
}

/** Backups, made and put back; everything in one file, out and in. */
export async function backupRoutes(
  api: FastifyInstance,
  serve: Serve,
  access: OfficeAccess,
  services: BackupServices,
): Promise<void> {
  const { store, backups, elsewhere, version } = services;

  serve('GET /backups', async () => ({ backups: await backups.list() }));

  serve('POST /backups', async () => {
    const made = await backups.make(store, version, store.shop.document.shop.backup.keep);
    void elsewhere.look();
    return made;
  });

  serve('POST /backups/:name/restore', async ({ params, request }) => {
    const { name } = params;
    const bytes = await backups.open(name);
    if (bytes === null) throw problem(404, 'api.backup-unknown', { name: name.slice(0, 60) });
    return putInPlace(services, request, name, bytes, 'own');
  });

  const toldElsewhere = async () => ({ ...elsewhere.state, backups: await elsewhere.list().catch(() => []) });
  serve('GET /backups/elsewhere', toldElsewhere);

  serve('PUT /backups/elsewhere', async ({ body }) => {
    const why = await elsewhere.name(body.folder);
    if (why !== null)
      throw problem(400, `api.elsewhere.${why}`, { folder: (body.folder ?? '').slice(0, 100) });
    return toldElsewhere();
  });

  serve('POST /backups/elsewhere/:name/restore', async ({ params, request }) => {
    const { name } = params;
    const bytes = await elsewhere.open(name);
    if (bytes === null) throw problem(404, 'api.backup-unknown', { name: name.slice(0, 60) });
    // Whoever holds the stick may have changed it.
    return putInPlace(services, request, name, bytes, 'foreign');
  });

  const everything = async (reply: FastifyReply, network: NetworkPart | null): Promise<FastifyReply> => {
    await store.jobs.ready();
    const kind = network === null ? '' : '-with-network-keys';
    const name = `shoulderline${kind}-${new Date().toISOString().slice(0, 10)}.json`;
    return reply
      .type('application/json')
      .header('cache-control', 'no-store')
      .header('content-disposition', `attachment; filename="${name}"`)
      .send(Readable.from(archiveLines(store, version, network)));
  };
  serve('GET /export', ({ reply }) => everything(reply, null));
  serve('GET /export/with-network-keys', async ({ reply }) => {
    const network = await networkPart(services.port, services.data);
    if (network === null) throw problem(409, 'api.no-network-keys');
    return everything(reply, network);
  });

  // Its body is read as it comes, a line at a time: it may be far larger than what is ever held at once.
  await api.register(async (scope) => {
    scope.removeContentTypeParser('application/json');
    scope.addContentTypeParser('application/json', (_request, payload, done) => done(null, payload));
    serveOn(scope, access)('POST /import', async ({ body, request, reply }) => {
      if (!(body instanceof Readable))
        throw problem(400, 'api.archive', { reason: { words: 'api.archive.empty' } });
      if (request.raw.httpVersionMajor === 1) reply.header('connection', 'close');
      return putInPlace(services, request, 'an exported file', inTime(body), 'foreign');
    });
  });
}

async function putInPlace(
  { restore, announcer }: BackupServices,
  request: FastifyRequest,
  from: string,
  bytes: AsyncIterable<Buffer>,
  origin: Origin,
): Promise<GivenBy<'POST /import'>> {
  try {
    return await restore(from, bytes, origin, !isOverNetwork(request));
  } finally {
    // Other data may be in place though it failed at its end: whoever reads looks anew.
    announcer.endAll();
  }
}
