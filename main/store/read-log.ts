import type { FilePort } from './file-port.ts';
import { readLine, type ReadLine, salvage } from './log-line.ts';

/** A line of the log that could not be read: where it stands, and whether what it held was found all the same. */
export interface DamagedLine {
  readonly line: number;
  readonly byte: number;
  readonly saved: number;
}

/** Up to where a log is known already: a place between two lines. */
export interface LogPlace {
  readonly seq: number;
  readonly bytes: number;
  readonly lines: number;
}

export interface ScannedLog extends LogPlace {
  /** Bytes after the last whole line: a line whose writing was cut short. */
  readonly torn: number;
  /** The last line is whole, only its end is missing: it counts, and the end has to be written. */
  readonly unended: boolean;
  readonly damaged: readonly DamagedLine[];
}

export const LOG_START: LogPlace = { seq: 0, bytes: 0, lines: 0 };
const CHUNK = 512 * 1024;
const MOST_REPORTED = 1000;

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
  const takeLine = (line: Buffer, at: number) => {
    lines += 1;
    const read = readLine(line);
    if (read !== null && take(read, at)) return;
    passed += 1;
    const saved = salvage(line).filter((one) => take(one, at + one.at)).length;
    if (damaged.length < MOST_REPORTED) damaged.push({ line: lines, byte: at, saved });
  };
  for (let at = from.bytes; at < end;) {
    const chunk = await port.slice(path, at, Math.min(at + CHUNK, end));
    if (chunk.length === 0) break;
    at += chunk.length;
    let start = 0;
    for (let stop = chunk.indexOf(10); stop >= 0; stop = chunk.indexOf(10, start)) {
      const line = chunk.subarray(start, stop);
      const whole = rest.length === 0 ? line : Buffer.concat([...rest, line]);
      rest = [];
      takeLine(whole, byte);
      byte += whole.length + 1;
      start = stop + 1;
    }
    if (start < chunk.length) rest.push(chunk.subarray(start));
  }
  const tail = Buffer.concat(rest);
  const last = tail.length === 0 ? undefined : salvage(tail)[0];
  const whole = last?.at === 0 && take(last, byte) ? last.end : 0;
  if (whole > 0) lines += 1;
  return {
    seq: seq + passed,
    bytes: byte + whole,
    lines,
    torn: tail.length - whole,
    unended: whole > 0,
    damaged,
  };
}
