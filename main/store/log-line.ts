import { crc32 } from 'node:zlib';

/** What stands before the entry in every line. */
const HEAD = /^\{"seq":(\d{1,15}),"sum":"([0-9a-f]{8})","entry":(?=\{)/;
const START = Buffer.from('{"seq":');
/** More than the head of any line takes. */
const HEAD_BYTES = 64;
const BRACE = 125;

/** A line read back. */
export interface ReadLine {
  readonly seq: number;
  readonly entry: unknown;
}

/** One line of the log: its sequence number, a checksum over number and entry, and what happened. */
export function writeLine(seq: number, entry: unknown): string {
  const text = JSON.stringify(entry);
  return `{"seq":${seq},"sum":"${sumOf(seq, text)}","entry":${text}}\n`;
}

/** A line (without its end) read back, or null when it is not whole: wrong form, wrong checksum, or no JSON. */
export function readLine(bytes: Buffer): ReadLine | null {
  const head = HEAD.exec(bytes.toString('latin1', 0, HEAD_BYTES));
  if (head === null || bytes.at(-1) !== BRACE) return null;
  const [before, number = '', sum] = head;
  const seq = Number(number);
  const entry = bytes.subarray(before.length, -1);
  if (sumOf(seq, entry) !== sum) return null;
  try {
    return { seq, entry: JSON.parse(entry.toString('utf8')) };
  } catch {
    return null;
  }
}

/**
 * The whole lines inside a damaged one, each with its place in it: where the end of a line was damaged, two lines run
 * together, and both can be read.
 */
export function salvage(bytes: Buffer): (ReadLine & { readonly at: number; readonly end: number })[] {
  const found: (ReadLine & { at: number; end: number })[] = [];
  const starts = [];
  for (let at = bytes.indexOf(START); at >= 0; at = bytes.indexOf(START, at + 1)) starts.push(at);
  for (const [k, at] of starts.entries()) {
    const next = starts[k + 1];
    const ends = next === undefined ? [bytes.length, bytes.length - 1] : [next - 1, next];
    for (const end of ends) {
      const read = readLine(bytes.subarray(at, end));
      if (read === null) continue;
      found.push({ ...read, at, end });
      break;
    }
  }
  return found;
}

function sumOf(seq: number, entry: string | Buffer): string {
  return crc32(entry, crc32(`${seq}:`))
    .toString(16)
    .padStart(8, '0');
}
