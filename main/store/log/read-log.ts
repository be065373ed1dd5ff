import { setImmediate as pause } from 'node:timers/promises';
import type { FilePort } from '../files/file-port.ts';
import type { Answered } from '../journal.ts';
import { type LineOf, lineOf, type MakeEntry, parseEntry, type ReadLine, salvageOf } from './log-line.ts';

/** A line of the log that could not be read: where it stands, and whether what it held was found all the same. */
export interface DamagedLine {
  readonly line: number;
  readonly byte: number;
  readonly saved: number;
}

/** Up to where a log is known already: a place between two lines. */
export interface LogPlace extends Answered {
  readonly bytes: number;
  readonly lines: number;
}

export interface ScannedLog extends LogPlace {
  /** Bytes after the last whole line: a line whose writing was cut short. */
  readonly torn: number;
  /** The last line holds a whole entry, only its end is missing: it counts, and the end has to be written. */
  readonly unended: boolean;
  readonly damaged: readonly DamagedLine[];
}

/** Up to where a log was read, in the midst of it. */
export interface Reached extends LogPlace {
  /** Lines after the entry of this number that could not be read: each counts for a number. */
  readonly passed: number;
  readonly damaged: readonly DamagedLine[];
}

/** What a log is read from. */
export type LogFile = Pick<FilePort, 'size' | 'slice'>;

export const LOG_START: LogPlace = { seq: 0, bytes: 0, lines: 0 };
export const PIECE = 512 * 1024;
/** So many pieces are asked for before they are looked at. */
const AHEAD = 4;
const MOST_REPORTED = 1000;

/**
 * A file's bytes from one place to another, in order. While one piece is looked at, the next ones are being read: each takes
 * several steps of the system, so others get their turn between two pieces.
 */
async function* chunksOf(
  port: LogFile,
  path: string,
  from: number,
  to: number,
  piece: number,
): AsyncGenerator<Buffer> {
  const ahead: Promise<Buffer>[] = [];
  let asked = from;
  const askAhead = () => {
    for (; ahead.length < AHEAD && asked < to; asked += piece) {
      const next = port.slice(path, asked, Math.min(asked + piece, to));
      // Told when its turn comes; until then a failure waits.
      next.catch(() => undefined);
      ahead.push(next);
    }
  };
  askAhead();
  let at = from;
  for (let next = ahead.shift(); next !== undefined; next = ahead.shift()) {
    const chunk = await next;
    askAhead();
    yield chunk;
    at += chunk.length;
    // The file ends before it was said to.
    if (at < to && chunk.length < piece) return;
    if (ahead.length > 0) await pause();
  }
}

/** Takes one entry, and where its line begins. */
export type TakeEntry = (read: ReadLine, byte: number) => void;

/** Reads a log from a known place, or from where another reading of it came to, up to its end. */
export type LogReader = (
  port: FilePort,
  path: string,
  from: LogPlace | Reached,
  each: TakeEntry,
) => Promise<ScannedLog>;

/**
 * Reads a log line by line, from a known place up to its end (or to a given byte). Damaged lines are passed over and
 * reported with their place; each counts for one number, so that no number is given out twice.
 */
export function scanLog(
  port: LogFile,
  path: string,
  from: LogPlace | Reached,
  each: TakeEntry,
  to = Number.POSITIVE_INFINITY,
): Promise<ScannedLog> {
  return scanLines(port, path, { from, to, make: parseEntry, each });
}

/** How a log is read, and what is made of its entries. */
interface Scanning<T> {
  readonly from: LogPlace | Reached;
  readonly to?: number;
  /** Bytes that are read at a time. */
  readonly piece?: number;
  readonly make: MakeEntry<T>;
  /** Takes one before the next one is made. */
  readonly each: (read: LineOf<T>, byte: number) => void;
  /** Told after each piece of the file how far it came; it is waited for. */
  readonly reached?: (reached: () => Reached) => Promise<void> | undefined;
}

/** The same, with something else made of the entries. */
export async function scanLines<T>(
  port: LogFile,
  path: string,
  { from, to = Number.POSITIVE_INFINITY, piece = PIECE, make, each, reached }: Scanning<T>,
): Promise<ScannedLog> {
  const end = Math.min(to, (await port.size(path)) ?? 0);
  const damaged: DamagedLine[] = 'damaged' in from ? [...from.damaged] : [];
  let { seq, lines } = from;
  let passed = 'passed' in from ? from.passed : 0;
  let rest: Buffer[] = [];
  let byte = from.bytes;
  const take = (read: LineOf<T>, at: number): boolean => {
    if (read.seq <= seq) return false;
    seq = read.seq;
    passed = 0;
    each(read, at);
    return true;
  };
  const takeLine = (bytes: Buffer, start: number, stop: number, at: number) => {
    lines += 1;
    const read = lineOf(make, bytes, start, stop);
    if (read !== null && take(read, at)) return;
    passed += 1;
    let saved = 0;
    for (const one of salvageOf(make, bytes.subarray(start, stop))) if (take(one, at + one.at)) saved += 1;
    if (damaged.length < MOST_REPORTED) damaged.push({ line: lines, byte: at, saved });
  };
  for await (const chunk of chunksOf(port, path, from.bytes, end, piece)) {
    let start = 0;
    for (let stop = chunk.indexOf(10); stop >= 0; stop = chunk.indexOf(10, start)) {
      if (rest.length === 0) {
        takeLine(chunk, start, stop, byte);
        byte += stop - start + 1;
      } else {
        const whole = Buffer.concat([...rest, chunk.subarray(start, stop)]);
        rest = [];
        takeLine(whole, 0, whole.length, byte);
        byte += whole.length + 1;
      }
      start = stop + 1;
    }
    if (start < chunk.length) rest.push(chunk.subarray(start));
    await reached?.(() => ({ seq, bytes: byte, lines, passed, damaged }));
  }
  const tail = Buffer.concat(rest);
  let saved = 0;
  let firstAt = 0;
  let whole = 0;
  for (const one of salvageOf(make, tail)) {
    if (!take(one, byte + one.at)) continue;
    if (saved === 0) firstAt = one.at;
    saved += 1;
    whole = one.end;
  }
  if (whole > 0) lines += 1;
  // A line before it whose own end was damaged ran into it.
  if (saved > 1 || firstAt > 0) damaged.push({ line: lines, byte, saved });
  return {
    seq: seq + passed,
    bytes: byte + whole,
    lines,
    torn: tail.length - whole,
    unended: whole > 0,
    damaged,
  };
}
