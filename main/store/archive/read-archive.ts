import { crc32 } from 'node:zlib';
import { z } from 'zod';
import { isJobId } from '#core/job/read-job.ts';
import { ARCHIVE_FORMAT, type ArchiveHead } from './archive-lines.ts';
import { EntryRules } from '../log/entry-rules.ts';
import { MOST_SEQ } from '../log/event-log.ts';
import { codeOf, StoreTrouble, wordsOf } from '../files/file-port.ts';
import { type JobDocument, readJobDocument } from '../documents/job-document.ts';
import { readLine, type ReadLine } from '../log/log-line.ts';
import { NewerFormat } from '../files/migration.ts';
import { planLine, type PlanLine } from '../documents/plan-lines.ts';
import { readShopDocument, type ShopDocument } from '../documents/shop-document.ts';

/** What is wrong with an archive: its line, and what was expected. Nothing of it was put in place. */
export class ArchiveFault extends Error {}

/** Takes what an archive holds, in its order: shop, network, jobs, log. */
export interface ArchiveSink {
  shop(document: ShopDocument): Promise<void>;
  /** The network's keys and devices, which nobody has read yet. */
  network(part: unknown): Promise<void>;
  job(document: JobDocument): Promise<void>;
  /** An earlier revision of the job before it. */
  past(document: JobDocument): Promise<void>;
  /** A line of the last plan of the job before it. */
  plan(line: PlanLine): Promise<void>;
  entry(read: ReadLine): Promise<void>;
}

export interface ArchiveRead {
  readonly head: ArchiveHead;
  readonly jobs: number;
  readonly entries: number;
  /** Does it hold the network's keys and devices? */
  readonly network: boolean;
}

export const MOST_ARCHIVE_BYTES = 2 * 1024 ** 3;
const MOST_LINE_BYTES = 16 * 1024 * 1024;
const MOST_DEPTH = 40;

/** Numbers above this come from no shop; they would leave too few for the marks to come. */
const MOST_BROUGHT_IN = MOST_SEQ / 2;

const instant = z.iso.datetime({ offset: true });
const headSchema = z.object({
  archive: z.int().min(1),
  version: z.string().max(100),
  made: instant,
  seq: z.number().int().nonnegative(),
});
/** The first form of an archive that ends with the number of its last entry. */
const SAYS_LAST = 2;
/** The first one that may hold last plans of jobs. */
const HAS_PLANS = 3;
/** The first one that may hold earlier revisions of jobs. */
const HAS_PAST = 4;
/** The first one that may hold the network's keys. */
const HAS_NETWORK = 5;
const endSchema = z.object({
  end: z.object({
    jobs: z.number(),
    entries: z.number(),
    last: z.number().optional(),
    sum: z.number(),
  }),
});

const revision = z.int().min(0).max(1_000_000_000);
const foreignShop = z.object({ revision });
const foreignJob = z.object({
  id: z.string().refine(isJobId, 'expected the id of a job'),
  revision,
  added: instant.nullable(),
});

/**
 * Where an archive comes from. One of the hub's own backups holds what its folder held, and is taken as that is taken
 * at a start; in a foreign one everything is held to what this program writes.
 */
export type Origin = 'own' | 'foreign';

/** Reads an archive from its bytes, bounded in size and depth, and hands on what it holds. Throws an ArchiveFault. */
export async function readArchive(
  bytes: AsyncIterable<Buffer>,
  sink: ArchiveSink,
  origin: Origin,
): Promise<ArchiveRead> {
  const reader = new ArchiveReader(sink, origin);
  let number = 0;
  try {
    for await (const line of lines(bytes)) {
      number += 1;
      await reader.take(line).catch((error: unknown) => {
        throw faultOf(error, `line ${number}`);
      });
    }
  } catch (error) {
    throw codeOf(error)?.startsWith('Z_') === true ? faultOf(error, `line ${number}`) : error;
  }
  return reader.finish();
}

/** A fault of the archive as such, with its place; trouble with the disk stays what it is. */
export function faultOf(error: unknown, place: string): unknown {
  if (error instanceof ArchiveFault || error instanceof StoreTrouble) return error;
  if (error instanceof NewerFormat) return new ArchiveFault(error.message);
  if (/^E[A-Z0-9]+$/.test(codeOf(error) ?? '')) return error;
  const reason = error instanceof z.ZodError ? issueOf(error) : wordsOf(error);
  return new ArchiveFault(`${place}: ${reason.slice(0, 200)}`);
}

function issueOf({ issues: [first] }: z.ZodError): string {
  const where = first === undefined || first.path.length === 0 ? '' : `${first.path.join('.')}: `;
  return `${where}${first?.message ?? ''}`;
}

class ArchiveReader {
  readonly #sink: ArchiveSink;
  #sum = 0;
  #state: 'before' | 'head' | 'shop' | 'body' | 'end' | 'after' = 'before';
  #head: ArchiveHead | null = null;
  #network = false;
  #jobs = 0;
  /** The last job that was read. */
  #job: Pick<JobDocument, 'id' | 'revision'> | null = null;
  #entries = 0;
  #seq = 0;
  /** What a foreign log is held to; null for one's own. */
  readonly #rules: EntryRules | null;

  constructor(sink: ArchiveSink, origin: Origin) {
    this.#sink = sink;
    this.#rules = origin === 'foreign' ? new EntryRules() : null;
  }

  async take(line: Buffer): Promise<void> {
    const text = line.toString('utf8');
    switch (this.#state) {
      case 'before':
        if (text !== '[') throw new Error('this is no archive of Shoulderline');
        this.#state = 'head';
        break;
      case 'head':
        this.#takeHead(text);
        break;
      case 'shop':
        await this.#takeShop(text);
        break;
      case 'body':
        if (text.startsWith('{"end":')) return this.#takeEnd(text);
        if (text.startsWith('{"seq":')) await this.#takeEntry(line);
        else if (this.#holds(HAS_PLANS) && /^\{"(plan|alike)":/.test(text)) await this.#takePlan(text);
        else if (this.#holds(HAS_PAST) && text.startsWith('{"past":')) await this.#takePast(text);
        else if (this.#holds(HAS_NETWORK) && text.startsWith('{"network":')) await this.#takeNetwork(text);
        else await this.#takeJob(text);
        break;
      case 'end':
        if (text !== ']') throw new Error('expected the end of the list');
        this.#state = 'after';
        return;
      case 'after':
        throw new Error('something stands behind the end');
    }
    this.#sum = crc32(NEWLINE, crc32(line, this.#sum));
  }

  #takeHead(text: string): void {
    const head = headSchema.parse(item(text));
    if (head.archive > ARCHIVE_FORMAT) throw new NewerFormat('the archive', head.archive, ARCHIVE_FORMAT);
    this.#head = head;
    this.#state = 'shop';
  }

  async #takeShop(text: string): Promise<void> {
    const document = readShopDocument(JSON.stringify(inside(item(text), 'shop')));
    if (this.#rules !== null) foreignShop.parse(document);
    await this.#sink.shop(document);
    this.#state = 'body';
  }

  async #takeNetwork(text: string): Promise<void> {
    if (this.#network || this.#jobs > 0 || this.#entries > 0)
      throw new Error('the network stands elsewhere than behind the shop');
    this.#network = true;
    await this.#sink.network(inside(item(text), 'network'));
  }

  async #takeJob(text: string): Promise<void> {
    if (this.#entries > 0) throw new Error('a job stands behind the log');
    this.#jobs += 1;
    const document = readJobDocument(JSON.stringify(inside(item(text), 'job')));
    if (this.#rules !== null) foreignJob.parse(document);
    this.#job = document;
    await this.#sink.job(document);
  }

  #holds(since: number): boolean {
    return (this.#head?.archive ?? 0) >= since;
  }

  async #takePast(text: string): Promise<void> {
    const document = readJobDocument(JSON.stringify(inside(item(text), 'past')));
    const job = this.#job;
    if (this.#entries > 0 || document.id !== job?.id || document.revision >= job.revision)
      throw new Error('an earlier revision stands behind no job of it');
    if (this.#rules !== null) foreignJob.parse(document);
    await this.#sink.past(document);
  }

  async #takePlan(text: string): Promise<void> {
    if (this.#entries > 0 || this.#jobs === 0) throw new Error('a last plan stands behind no job');
    await this.#sink.plan(planLine.parse(item(text)));
  }

  async #takeEntry(line: Buffer): Promise<void> {
    tooDeep(line.toString('latin1'));
    const read = line.at(-1) === COMMA ? readLine(line.subarray(0, -1)) : null;
    if (read === null) throw new Error('an entry of the log is damaged');
    if (read.seq <= this.#seq) throw new Error('an entry of the log is out of order');
    if (this.#rules !== null && read.seq > MOST_BROUGHT_IN)
      throw new Error(`an entry of the log has a number above ${MOST_BROUGHT_IN}`);
    this.#rules?.hold(read.entry);
    this.#seq = read.seq;
    this.#entries += 1;
    await this.#sink.entry(read);
  }

  #takeEnd(text: string): void {
    const { end } = endSchema.parse(JSON.parse(text));
    if (end.jobs !== this.#jobs || end.entries !== this.#entries || end.sum !== this.#sum)
      throw new Error('the archive is damaged: its checksum or its counts are wrong');
    const { archive, seq } = this.#head ?? { archive: 0, seq: 0 };
    if (archive >= SAYS_LAST && end.last !== this.#seq)
      throw new Error(`the archive is damaged: its end says another last entry than ${this.#seq}`);
    if (seq !== this.#seq)
      throw new Error(
        `the archive is cut short: it is to hold entries up to ${seq}; it ends at ${this.#seq}`,
      );
    this.#state = 'end';
  }

  finish(): ArchiveRead {
    if (this.#head === null || this.#state !== 'after') throw new ArchiveFault('the archive is cut short');
    return { head: this.#head, jobs: this.#jobs, entries: this.#entries, network: this.#network };
  }
}

const NEWLINE = '\n';
const COMMA = 44;

/** A line of the list, without its comma. */
function item(text: string): unknown {
  tooDeep(text);
  if (!text.endsWith(',')) throw new Error('expected a comma at the end');
  return JSON.parse(text.slice(0, -1));
}

function inside(input: unknown, name: string): unknown {
  return z.strictObject({ [name]: z.unknown() }).parse(input)[name];
}

function tooDeep(text: string): void {
  let depth = 0;
  for (let at = 0, quoted = false; at < text.length; at += 1) {
    const character = text.charCodeAt(at);
    if (character === 92 && quoted) at += 1;
    else if (character === 34) quoted = !quoted;
    else if (!quoted && (character === 123 || character === 91)) depth += 1;
    else if (!quoted && (character === 125 || character === 93)) depth -= 1;
    if (depth > MOST_DEPTH) throw new Error(`nested deeper than ${MOST_DEPTH}`);
  }
}

/** The lines of a text, without their ends. */
async function* lines(bytes: AsyncIterable<Buffer>): AsyncGenerator<Buffer> {
  let rest: Buffer[] = [];
  let held = 0;
  let total = 0;
  for await (const chunk of bytes) {
    total += chunk.length;
    if (total > MOST_ARCHIVE_BYTES) throw new ArchiveFault(`more than ${MOST_ARCHIVE_BYTES} bytes`);
    let start = 0;
    for (let stop = chunk.indexOf(10); stop >= 0; stop = chunk.indexOf(10, start)) {
      yield Buffer.concat([...rest, chunk.subarray(start, stop)]);
      rest = [];
      held = 0;
      start = stop + 1;
    }
    if (start < chunk.length) rest.push(chunk.subarray(start));
    held += chunk.length - start;
    if (held > MOST_LINE_BYTES) throw new ArchiveFault(`a line of more than ${MOST_LINE_BYTES} bytes`);
  }
  if (held > 0) yield Buffer.concat(rest);
}
