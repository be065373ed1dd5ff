import type { FastifyInstance } from 'fastify';
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { Logger } from 'pino';
import { speakFaults } from '#core/telling/speak-faults.ts';
import { speakAs } from '#core/words/say.ts';
import { readNetworkPart } from '../network/archived-network.ts';
import { type NetworkTold, NetworkDesk, NOTHING_TOLD } from '../network/network-desk.ts';
import { PrintDesk } from '../printing/print-desk.ts';
import type { PrintSystem } from '../printing/printer.ts';
import { type BackupClock, startBackupClock } from '../store/archive/backup-clock.ts';
import { Backups } from '../store/archive/backups.ts';
import { ElsewhereBackups } from '../store/archive/elsewhere.ts';
import { disk } from '../store/files/disk.ts';
import { besideIn, readBeside } from '../store/log/beside/read-beside.ts';
import type { LogReader } from '../store/log/read-log.ts';
import { codeOf, type FilePort } from '../store/files/file-port.ts';
import { type HoldOptions, holdOrLook } from '../store/files/hold-folder.ts';
import type { Holder } from '../store/files/holder.ts';
import { PinStore } from '../store/documents/pin-store.ts';
import { restoringInto } from '../store/archive/restore.ts';
import { Store } from '../store/store.ts';
import { loopbackHosts } from './guard-requests.ts';
import { addDemoJob } from './demo.ts';
import { askedLanguage } from './asked-language.ts';
import { announcements } from './events.ts';
import { KeptSessions } from './kept-sessions.ts';
import { servedScreens } from './served-screens.ts';
import { OfficeAccess } from './office-access.ts';
import { buildService, HEADER_LIMIT, type ServiceParts } from './service.ts';
import { troublesOf } from './health.ts';
import { StationsSeen } from './stations-seen.ts';
import type { ShellLine } from '../printing/shell-line.ts';
import { printingHere } from '../printing/printing-here.ts';
import { WorkDesk } from '../work/work-desk.ts';

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
  /** The line to the shell that started the hub, if one did. */
  readonly shell?: ShellLine | null;
  /** What prints, where it is not what this machine prints with. */
  readonly printing?: PrintSystem;
  /** The built file of a thread that plans and makes papers; without it that is done in this one. */
  readonly worker?: string;
  /** The built file of a thread that reads a large log from the disk; without it that is done in this one. */
  readonly logReader?: string;
  /** The file system, where it is not the disk as it is. */
  readonly files?: FilePort;
  /** How the folder is held, where that is not as usual. */
  readonly hold?: HoldOptions;
  /** What was said of the shop's network from outside; without it the office chooses. */
  readonly network?: NetworkTold;
  /** The clock by which pairings are over, where it is not the machine's. */
  readonly now?: () => number;
  /** Told a line for each address at which the network is served, or why it is not. */
  readonly say?: (line: string) => void;
}

export interface Hub {
  readonly url: string;
  readonly store: Store;
  readonly network: NetworkDesk;
  /** Settles, with the reason, when the folder is not this hub's any more: it answers nothing more and is to stop. */
  readonly lost: Promise<string>;
  stop(): Promise<void>;
}

/** Why the hub did not start: one line for a person. */
export class StartFault extends Error {}

/** A thread reads from the disk as it is, and knows of no other. */
function readerOf({ logReader, files, logger }: HubOptions): LogReader | undefined {
  if (logReader === undefined || files !== undefined) return undefined;
  return readBeside(besideIn(logReader), (trouble) => logger.warn(trouble));
}

/** Starts the service and its store; both end with `stop`, which finishes what is being written. */
export async function startHub(options: HubOptions): Promise<Hub> {
  const { logger, data, version, files: allFiles = disk, shell = null } = options;
  await allFiles.makeFolder(data);
  const taken = await holdOrLook(allFiles, data, options.hold);
  if (!taken.ok) throw new StartFault(inUse(data, taken.holder));
  const { held } = taken;
  const { files } = held;
  if (held.takenOver !== undefined)
    logger.warn({ holder: held.takenOver }, 'took over the lock of a process that is gone');
  const work = new WorkDesk(options.worker ?? null);
  try {
    const store = await Store.open({
      maker: work,
      reader: readerOf(options),
      port: files,
      folder: data,
      version,
      renew: !held.certain,
      report: (trouble) => logger.error(trouble),
    });
    // What is printed here is in the shop's language; what is answered in that of who asks.
    speakAs(() => store.shop.document.shop.language ?? 'en');
    const pin = await PinStore.open(files, join(data, 'pin.json'), Date.now, store.pinWas);
    await store.notePin(pin.set, pin.gone).catch(() => undefined);
    sayWhatWasFound(store, logger);
    const backups = new Backups(files, data);
    const keep = () => store.shop.document.shop.backup.keep;
    const elsewhere = await ElsewhereBackups.open(files, allFiles, data, backups, keep);
    for (const trouble of troublesOf({ store, pin, elsewhere }))
      logger.error(trouble, 'everybody is told of this');
    if (options.demo && files.barred === undefined) await addDemoJob(data, store);
    const clock = backupClock(store, backups, elsewhere, version, logger);
    const desk = new PrintDesk(options.printing ?? printingHere(shell));
    let port = options.port;
    const well = () => troublesOf({ store, pin, elsewhere }).length === 0;
    const announced = announcements(store, well, servedScreens(options.ui));
    const seen = new StationsSeen(() => announced.tell({ event: 'stations', data: {} }));
    const network = await NetworkDesk.open({
      port: files,
      data,
      told: options.network ?? NOTHING_TOLD,
      pin: () => pin.mark !== null,
      async serve(network) {
        const { app: over } = await buildService(parts, network.hosts, network);
        await over.ready();
        return () => over.close();
      },
      say(line) {
        logger.info(line);
        options.say?.(line);
      },
      report: (trouble, error) => logger.error({ err: error }, trouble),
      language: (request) => askedLanguage(request),
      headerLimit: HEADER_LIMIT,
      ...(options.now === undefined ? {} : { now: options.now }),
    });
    const parts: ServiceParts = {
      port: files,
      data,
      version,
      store,
      pin,
      backups,
      elsewhere,
      clock,
      held,
      restore: restoringInto(files, data, store, backups, version, work, {
        read: readNetworkPart,
        replacing: (put) => network.replacing(put),
      }),
      shell,
      desk,
      work,
      logger,
      network,
      access: await OfficeAccess.open(pin, new KeptSessions(files, data)),
      announced,
      seen,
      ...(options.ui === undefined ? {} : { ui: options.ui }),
    };
    const { app } = await buildService(parts, () => loopbackHosts(port));
    const url = await listen(app, options);
    elsewhere.start();
    port = Number(new URL(url).port);
    await network.start();
    return {
      url,
      store,
      network,
      lost: held.lost.then((why) => {
        logger.error({ holder: why.holder }, why.message);
        return why.message;
      }),
      async stop() {
        await desk.close();
        await work.close();
        await network.stop();
        await app.close();
        seen.close();
        announced.close();
        elsewhere.stop();
        await clock.stop();
        await store.close();
        await held.release();
      },
    };
  } catch (error) {
    await work.close();
    await held.release();
    throw error;
  }
}

function inUse(data: string, { pid, host }: Holder): string {
  const where = host === '' || host === hostname() ? '' : ` on ${host}`;
  return `the data folder ${data} is in use by process ${pid}${where}: stop that one first, or set SHOULDERLINE_DATA to another folder`;
}

function sayWhatWasFound({ found, jobs, shop }: Store, logger: Logger): void {
  const { torn, damaged } = found.scanned;
  if (torn > 0) logger.warn({ bytes: torn }, 'cut off a torn last line of the log');
  for (const line of damaged) logger.error(line, 'passed over a damaged line of the log');
  if (found.strange > 0) logger.error({ lines: found.strange }, 'the log holds entries of an unknown kind');
  for (const kept of found.knewMore)
    logger.error({ kept }, 'the log has lost entries that this snapshot knew');
  if (found.noSnapshot !== null) logger.info({ because: found.noSnapshot }, 'read the log from its start');
  if (found.copied !== null)
    logger.info(
      { copy: found.copied },
      'copied jobs and shop as they were, and wrote them in the form of this version',
    );
  for (const unkept of jobs.unkept) logger.error(unkept, 'the plan of a job could not be kept beside it');
  for (const { summary, faults } of jobs.all())
    if (faults.length > 0)
      logger.warn(
        { job: summary.id, faults: speakFaults(faults.slice(0, 5), 'en') },
        'a job needs attention: it shows its last plan',
      );
  for (const trouble of [...jobs.troubles, shop.trouble])
    if (trouble !== null) logger.error(trouble, 'kept an unreadable document aside');
}

function backupClock(
  store: Store,
  backups: Backups,
  elsewhere: ElsewhereBackups,
  version: string,
  logger: Logger,
): BackupClock {
  const often = () => store.shop.document.shop.backup;
  return startBackupClock({
    list: () => backups.list(),
    everyHours: () => often().everyHours,
    async make() {
      logger.info(await backups.make(store, version, often().keep), 'made a backup and read it back');
      void elsewhere.look();
    },
    report: (error) => logger.error({ err: error }, 'the backup that is due could not be made'),
    now: Date.now,
  });
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
