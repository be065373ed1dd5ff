import { join } from 'node:path';
import { MOST_DOORS } from '#core/job/read-job.ts';
import { documentText } from '../files/document.ts';
import { type FilePort, replaceFile, StoreTrouble, writeAll } from '../files/file-port.ts';
import { sealed } from '../files/seal.ts';
import { documentName, pastName } from '../documents/job-document.ts';
import { keptPlanName, readKeptLines } from '../documents/kept-plan.ts';
import type { JobMaker } from '../documents/job-maker.ts';
import { writeLine } from '../log/log-line.ts';
import {
  DEVICE_WAYS_NAME,
  DEVICES_NAME,
  JOBS_NAME,
  LOG_NAME,
  NETWORK_KEYS_NAME,
  SHOP_NAME,
} from '../files/folder-names.ts';
import { openFolder } from '../open-folder.ts';
import { PlanWriter } from '../documents/plan-writer.ts';
import {
  ArchiveFault,
  type ArchiveRead,
  type ArchiveSink,
  faultOf,
  type Origin,
  readArchive,
} from './read-archive.ts';
import type { ReplacedNetwork } from './network-part.ts';
import { INCOMING } from './swap.ts';

const BATCH = 1024 * 1024;

/**
 * Unpacks an archive into the folder for what comes in, and opens it there as the hub would: only what reads back whole
 * is handed on. Names of files are this program's own; none is taken from the archive.
 */
export async function stageArchive(
  port: FilePort,
  folder: string,
  bytes: AsyncIterable<Buffer>,
  origin: Origin,
  version: string,
  maker: JobMaker,
  readNetwork: ReplacedNetwork['read'],
): Promise<ArchiveRead & { readonly folder: string }> {
  const incoming = join(folder, INCOMING);
  await port.remove(incoming);
  await port.makeFolder(join(incoming, JOBS_NAME));
  const names = new Set<string>();
  /** The job whose last plan is coming in, and those whose has. */
  let last: string | null = null;
  let plan: PlanWriter | null = null;
  const withPlans: string[] = [];
  const endPlan = async () => {
    await plan?.finish();
    plan = null;
  };
  const log = await port.create(join(incoming, LOG_NAME));
  let read: ArchiveRead;
  try {
    let batch: string[] = [];
    let held = 0;
    const write = async () => {
      await writeAll(log, Buffer.from(batch.join('')));
      batch = [];
      held = 0;
    };
    const sink: ArchiveSink = {
      shop: (document) => replaceFile(port, join(incoming, SHOP_NAME), sealed(documentText(document))),
      async network(part) {
        const { keys, devices, ways } = readNetwork(part);
        await replaceFile(port, join(incoming, NETWORK_KEYS_NAME), sealed(documentText(keys)));
        await replaceFile(port, join(incoming, DEVICES_NAME), sealed(documentText(devices)));
        await replaceFile(port, join(incoming, DEVICE_WAYS_NAME), sealed(documentText(ways)));
      },
      async job(document) {
        await endPlan();
        last = document.id;
        const name = documentName(document.id);
        if (names.has(name)) throw new ArchiveFault(`the job ${document.id} stands there twice`);
        names.add(name);
        await replaceFile(port, join(incoming, JOBS_NAME, name), sealed(documentText(document)));
      },
      past: (document) =>
        replaceFile(
          port,
          join(incoming, JOBS_NAME, pastName(document.id, document.revision)),
          sealed(documentText(document)),
        ),
      async plan(line) {
        if (last === null) return;
        if (plan === null) {
          plan = new PlanWriter(port, join(incoming, JOBS_NAME, keptPlanName(last)), UNKNOWN);
          withPlans.push(last);
        }
        await plan.add(line);
      },
      async entry({ seq, entry }) {
        await endPlan();
        const line = writeLine(seq, entry);
        batch.push(line);
        held += line.length;
        if (held > BATCH) await write();
      },
    };
    read = await readArchive(bytes, sink, origin);
    await endPlan();
    await write();
    await log.flush();
  } finally {
    await droppedPlan(plan);
    await log.close();
  }
  for (const id of withPlans) {
    const lines = await readKeptLines(port, join(incoming, JOBS_NAME, keptPlanName(id)));
    const { whole } =
      lines === null
        ? { whole: false }
        : await maker.makeJob({ make: 'check', id, lines }, { doors: MOST_DOORS, marks: MOST_DOORS });
    if (!whole) throw new ArchiveFault(`the last plan of the job ${id} is not whole`);
  }
  await readBack(port, incoming, read, version, maker);
  return { ...read, folder: incoming };
}

/** Of what the plans in an archive were made is not said there. */
const UNKNOWN = { hash: '', version: '' };

async function droppedPlan(plan: PlanWriter | null): Promise<void> {
  await plan?.drop();
}

/** Opens what was unpacked and compares it with what the archive said. */
async function readBack(
  port: FilePort,
  incoming: string,
  { jobs, entries }: ArchiveRead,
  version: string,
  maker: JobMaker,
): Promise<void> {
  const opened = await openFolder(port, incoming, version, maker).catch((error: unknown) => {
    throw faultOf(error, 'its data cannot be opened');
  });
  await opened.jobs.ready();
  await opened.log.close();
  const [trouble] = opened.jobs.troubles;
  if (trouble !== undefined) throw new ArchiveFault(`a job cannot be opened: ${trouble.reason}`);
  const { damaged, torn, lines } = opened.scanned;
  if (damaged.length > 0 || torn > 0 || lines !== entries || opened.jobs.count !== jobs)
    throw new StoreTrouble('what was unpacked does not read back as it was');
}
