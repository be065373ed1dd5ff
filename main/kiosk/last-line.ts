import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { z } from 'zod';

/** How much of a log's end is looked at. */
const END = 64 * 1024;
/** How much of a line a screen shows. */
const MOST_SHOWN = 400;

const entry = z.object({
  time: z.number().optional(),
  msg: z.string().optional(),
  err: z.object({ message: z.string() }).optional(),
});

/** The last line of the program's log, as a person reads it; null when there is none to be read. */
export function lastLine(path: string): string | null {
  try {
    const file = openSync(path, 'r');
    try {
      const { size } = fstatSync(file);
      const bytes = Buffer.alloc(Math.min(size, END));
      readSync(file, bytes, 0, bytes.length, size - bytes.length);
      const line = bytes.toString('utf8').trimEnd().split('\n').at(-1)?.trim() ?? '';
      return line === '' ? null : readable(line).slice(0, MOST_SHOWN);
    } finally {
      closeSync(file);
    }
  } catch {
    return null;
  }
}

/** Time, message and error of an entry; any other line as it stands. */
function readable(line: string): string {
  const read = entry.safeParse(parsed(line));
  if (!read.success || read.data.msg === undefined) return line;
  const { time, msg, err } = read.data;
  const why = err === undefined || err.message === msg ? '' : `: ${err.message}`;
  return `${time === undefined ? '' : `${at(time)} `}${msg}${why}`;
}

function at(time: number): string {
  const date = new Date(time);
  return Number.isNaN(date.getTime()) ? '' : date.toISOString();
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}
