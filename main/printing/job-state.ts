import { existsSync } from 'node:fs';
import { request, type RequestOptions } from 'node:http';

/** How a job of CUPS ended; null when it cannot be told. */
export type JobEnd = 'completed' | 'aborted' | 'cancelled' | 'waiting' | null;

/**
 * Asks the scheduler by IPP what became of a job. `lpstat` lists a job that was given up in the same words as one that
 * was printed, so this is asked once a job has left its queue. Operation and states: RFC 8011, 4.3.4 and 5.3.7.
 */
export async function jobEnd(
  job: { readonly printer: string; readonly id: number; readonly title: string },
  env: NodeJS.ProcessEnv = process.env,
): Promise<JobEnd> {
  const where = scheduler(env);
  if (where === null) return null;
  try {
    const answer = await post(where, getJobAttributes(job.printer, job.id));
    // Another scheduler may know another job by this number.
    if (textOf(answer, 'job-name') !== job.title) return null;
    const state = integerOf(answer, 'job-state');
    return state === 9 ? 'completed' : state === 8 ? 'aborted' : state === 7 ? 'cancelled' : 'waiting';
  } catch {
    return null;
  }
}

/** Where the scheduler listens, as CUPS itself finds it: CUPS_SERVER, else its socket, else port 631 of this machine. */
function scheduler(env: NodeJS.ProcessEnv): RequestOptions | null {
  const named = env.CUPS_SERVER?.split('/version=')[0];
  if (named === undefined || named === '') {
    const socket = ['/run/cups/cups.sock', '/private/var/run/cupsd'].find((path) => existsSync(path));
    return socket === undefined ? { host: '127.0.0.1', port: 631 } : { socketPath: socket };
  }
  if (named.startsWith('/')) return { socketPath: named };
  const [, host, port] = /^(.*?)(?::(\d+))?$/.exec(named) ?? [];
  return host === undefined ? null : { host, port: Number(port ?? '631') };
}

function post(where: RequestOptions, body: Buffer): Promise<Buffer> {
  return new Promise((answered, failed) => {
    const asked = request(
      {
        ...where,
        method: 'POST',
        path: '/jobs/',
        headers: { host: 'localhost', 'content-type': 'application/ipp', 'content-length': body.length },
        timeout: 3000,
      },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () => answered(Buffer.concat(chunks)));
        response.on('error', failed);
      },
    );
    asked.on('timeout', () => asked.destroy(new Error('no answer')));
    asked.on('error', failed);
    asked.end(body);
  });
}

const OPERATION_ATTRIBUTES = 0x01;
const END_OF_ATTRIBUTES = 0x03;
const INTEGER = 0x21;
const KEYWORD = 0x44;
const URI = 0x45;

function getJobAttributes(printer: string, id: number): Buffer {
  const number = Buffer.alloc(4);
  number.writeInt32BE(id);
  return Buffer.concat([
    Buffer.from([2, 0, 0, 0x09, 0, 0, 0, 1, OPERATION_ATTRIBUTES]),
    attribute(0x47, 'attributes-charset', 'utf-8'),
    attribute(0x48, 'attributes-natural-language', 'en'),
    attribute(URI, 'printer-uri', `ipp://localhost/printers/${printer}`),
    attribute(INTEGER, 'job-id', number),
    attribute(KEYWORD, 'requested-attributes', 'job-state'),
    attribute(KEYWORD, '', 'job-name'),
    Buffer.from([END_OF_ATTRIBUTES]),
  ]);
}

function attribute(tag: number, name: string, value: string | Buffer): Buffer {
  const long = (text: Buffer) => {
    const length = Buffer.alloc(2);
    length.writeUInt16BE(text.length);
    return Buffer.concat([length, text]);
  };
  return Buffer.concat([Buffer.from([tag]), long(Buffer.from(name)), long(Buffer.from(value))]);
}

/** The bytes of an attribute's first value in an answer. */
function valueOf(answer: Buffer, wanted: string): Buffer | null {
  let at = 8;
  while (at < answer.length) {
    const tag = answer[at] ?? END_OF_ATTRIBUTES;
    at += 1;
    if (tag === END_OF_ATTRIBUTES) return null;
    if (tag < 0x10) continue;
    const name = answer.readUInt16BE(at);
    const value = answer.readUInt16BE(at + 2 + name);
    const start = at + 4 + name;
    if (answer.toString('utf8', at + 2, at + 2 + name) === wanted)
      return answer.subarray(start, start + value);
    at = start + value;
  }
  return null;
}

function integerOf(answer: Buffer, name: string): number | null {
  const value = valueOf(answer, name);
  return value?.length === 4 ? value.readInt32BE() : null;
}

function textOf(answer: Buffer, name: string): string | null {
  return valueOf(answer, name)?.toString('utf8') ?? null;
}
