import { crc32 } from 'node:zlib';

const LINE = /^\{"seq":(\d{1,15}),"sum":"([0-9a-f]{8})","entry":(\{.*\})\}$/;

/** One line of the log: its sequence number, a checksum over both, and what happened. */
export function writeLine(seq: number, entry: unknown): string {
  const text = JSON.stringify(entry);
  return `{"seq":${seq},"sum":"${sumOf(seq, text)}","entry":${text}}\n`;
}

/** A line read back, or null when it is not whole: wrong form, wrong checksum, or no JSON. */
export function readLine(line: string): { readonly seq: number; readonly entry: unknown } | null {
  const parts = LINE.exec(line);
  if (parts === null) return null;
  const [, number = '', sum, text = ''] = parts;
  const seq = Number(number);
  if (sumOf(seq, text) !== sum) return null;
  try {
    return { seq, entry: JSON.parse(text) as unknown };
  } catch {
    return null;
  }
}

function sumOf(seq: number, text: string): string {
  return crc32(`${seq}:${text}`).toString(16).padStart(8, '0');
}
