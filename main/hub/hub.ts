import fastifyStatic from '@fastify/static';
import fastify, { type FastifyInstance } from 'fastify';
import { existsSync } from 'node:fs';
import type { Logger } from 'pino';
import { codeOf, disk } from '../store/file-port.ts';
import { takeLock } from '../store/lock.ts';
import { Store } from '../store/store.ts';
import { holdBorder, loopbackHosts } from './border.ts';
import { addDemoJob } from './demo.ts';
import { answerErrors } from './errors.ts';
import { eventRoutes } from './events.ts';
import { jobRoutes } from './job-routes.ts';
import { markRoutes } from './mark-routes.ts';
import { paperRoutes } from './paper-routes.ts';
import { screenRoutes } from './screen-routes.ts';

/** A job file may have 8 MiB; a request around it a little more. */
const BODY_LIMIT = 8 * 1024 * 1024 + 64 * 1024;

export interface HubOptions {
  /** The data folder. */
  readonly data: string;
  /** 0 takes any free port. */
  readonly port: number;
  readonly host: string;
  /** The folder of the built screens; without it the hub serves its API alone. */
  readonly ui?: string;
  /** Put in the demo job if this is the very first start in this folder. */
  readonly demo: boolean;
  readonly version: string;
  readonly logger: Logger;
}

export interface Hub {
  readonly url: string;
  readonly store: Store;
  stop(): Promise<void>;
}

/** Why the hub did not start: one line for a person. */
export class StartFault extends Error {}

/** Starts the service and its store; both end with `stop`, which finishes what is being written. */
export async function startHub(options: HubOptions): Promise<Hub> {
  const { logger } = options;
  await disk.makeFolder(options.data);
  const lock = await takeLock(disk, options.data, process.pid);
  if (!lock.ok)
    throw new StartFault(
      `the data folder ${options.data} is in use by process ${lock.holder.pid}: stop that one first, or set SHOULDERLINE_DATA to another folder`,
    );
  if (lock.takenOver !== undefined)
    logger.warn({ holder: lock.takenOver }, 'took over the lock of a process that is gone');
  try {
    const store = await Store.open(disk, options.data);
    if (store.read.torn > 0) logger.warn({ bytes: store.read.torn }, 'cut off a torn last line of the log');
    for (const damaged of store.read.damaged) logger.error(damaged, 'passed over a damaged line of the log');
    for (const trouble of store.jobs.troubles) logger.error(trouble, 'kept an unreadable job aside');
    if (options.demo) await addDemoJob(options.data, store);
    const app = fastify({
      loggerInstance: logger,
      bodyLimit: BODY_LIMIT,
      forceCloseConnections: true,
      routerOptions: { maxParamLength: 200 },
    });
    let port = options.port;
    holdBorder(app as unknown as FastifyInstance, () => loopbackHosts(port));
    answerErrors(app as unknown as FastifyInstance, BODY_LIMIT);
    await app.register(
      async (scope) => {
        const api = scope as unknown as FastifyInstance;
        const announce = eventRoutes(api, store);
        jobRoutes(api, store, announce);
        markRoutes(api, store);
        paperRoutes(api, store);
        api.get('/health', async () => ({ ok: true, version: options.version, seq: store.lastSeq }));
      },
      { prefix: '/api' },
    );
    if (options.ui !== undefined && existsSync(options.ui)) {
      await app.register(fastifyStatic, { root: options.ui, serve: false });
      screenRoutes(app as unknown as FastifyInstance, options.ui);
    }
    const url = await listen(app as unknown as FastifyInstance, options);
    port = Number(new URL(url).port);
    return {
      url,
      store,
      async stop() {
        await app.close();
        await store.close();
        await lock.release();
      },
    };
  } catch (error) {
    await lock.release();
    throw error;
  }
}

async function listen(app: FastifyInstance, { port, host }: HubOptions): Promise<string> {
  try {
    return await app.listen({ port, host });
  } catch (error) {
    if (codeOf(error) === 'EADDRINUSE')
      throw new StartFault(
        `port ${port} is taken: another program uses it; stop that one, or set SHOULDERLINE_PORT to another number`,
      );
    throw error;
  }
}
