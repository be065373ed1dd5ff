import { setImmediate as pause } from 'node:timers/promises';
import type { FilePort } from '../files/file-port.ts';
import type { Answered } from '../journal.ts';
import { readLine, type ReadLine, salvage } from './log-line.ts';

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

export const LOG_START: LogPlace = { seq: 0, bytes: 0, lines: 0 };
const CHUNK = 512 * 1024;
/** So many pieces are asked for before they are looked at. */
const AHEAD = 4;
const MOST_REPORTED = 1000;

/**
 * A file's bytes from one place to another, in order. While one piece is looked at, the next ones are being read: each takes
 * several steps of the system, so others get their turn between two pieces.
 */
async function* chunksOf(port: FilePort, path: string, from: number, to: number): AsyncGenerator<Buffer> {
  const ahead: Promise<Buffer>[] = [];
  let asked = from;
  const askAhead = () => {
    for (; ahead.length < AHEAD && asked < to; asked += CHUNK) {
      const piece = port.slice(path, asked, Math.min(asked + CHUNK, to));
      // Told when its turn comes; until then a failure waits.
      piece.catch(() => undefined);
      ahead.push(piece);
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
    if (at < to && chunk.length < CHUNK) return;
    if (ahead.length > 0) await pause();
  }
}

/** Takes one entry, and where its line begins. */
export type TakeEntry = (read: ReadLine, byte: number) => void;

/**
 * Reads a log line by line, from a known place up to its end (or to a given byte). Damaged lines are passed over and
 * reported with their place; each counts for one number, so that no number is given out twice.
 */
export async function scanLog(
  port: FilePort,
  path: string,
  from: LogPlace,
  each: TakeEntry,
  to = Number.POSITIVE_INFINITY,
): Promise<ScannedLog> {
  const end = Math.min(to, (await port.size(path)) ?? 0);
  const damaged: DamagedLine[] = [];
  let { seq, lines } = from;
  let passed = 0;
  let rest: Buffer[] = [];
  let byte = from.bytes;
  const take = (read: ReadLine, at: number): boolean => {
    if (read.seq <= seq) return false;
    seq = read.seq;
    passed = 0;
    each(read, at);
    return true;
  };
  const takeLine = (bytes: Buffer, start: number, stop: number, at: number) => {
    lines += 1;
    const read = readLine(bytes, start, stop);
    if (read !== null && take(read, at)) return;
    passed += 1;
    const saved = salvage(bytes.subarray(start, stop)).filter((one) => take(one, at + one.at)).length;
    if (damaged.length < MOST_REPORTED) damaged.push({ line: lines, byte: at, saved });
  };
  for await (const chunk of chunksOf(port, path, from.bytes, end)) {
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
  }
  const tail = Buffer.concat(rest);
  const found = salvage(tail).filter((one) => take(one, byte + one.at));
  const whole = found.at(-1)?.end ?? 0;
  if (whole > 0) lines += 1;
  // A line before it whose own end was damaged ran into it.
  if (found.length > 1 || (found[0]?.at ?? 0) > 0) damaged.push({ line: lines, byte, saved: found.length });
  return {
    seq: seq + passed,
    bytes: byte + whole,
    lines,
    torn: tail.length - whole,
    unended: whole > 0,
    damaged,
  };
}
