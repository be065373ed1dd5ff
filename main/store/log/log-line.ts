import { crc32 } from 'node:zlib';
import type { Numbered } from '../journal.ts';
import { type FixedText, fixedText, standsAt, viewOf } from './fixed-text.ts';
import { readMarkEntry } from './mark-entry.ts';
import { sumOfNumber } from './number-sum.ts';

/** What stands before the entry in every line: number and sum between these. */
const START_TEXT = '{"seq":';
const START = fixedText(START_TEXT);
const SUM = fixedText(',"sum":"');
const ENTRY = fixedText('","entry":{');
const MOST_DIGITS = 15;
const SUM_DIGITS = 8;
const BRACE = 125;
const ZERO = 48;

/** A line read back. */
export type ReadLine = Numbered;

/** A line of which something else may have been made than its entry. */
export interface LineOf<T> {
  readonly seq: number;
  readonly entry: T;
}

/** Makes what is wanted of an entry, which stands from one place to another; null where it is no JSON. */
export type MakeEntry<T> = (bytes: Buffer, from: number, to: number) => T | null;

/** One line of the log: its sequence number, a checksum over number and entry, and what happened. */
export function writeLine(seq: number, entry: unknown): string {
  const text = JSON.stringify(entry);
  return `{"seq":${seq},"sum":"${sumOf(seq, text).toString(16).padStart(SUM_DIGITS, '0')}","entry":${text}}\n`;
}

/**
 * A line (the bytes from one place to another, without its end) read back, or null when it is not whole: wrong form,
 * wrong checksum, or no JSON. A hub that starts reads every line of its log: the head is read byte by byte, without a
 * text made of it.
 */
export function readLine(bytes: Buffer, from = 0, to = bytes.length): ReadLine | null {
  return lineOf(parseEntry, bytes, from, to);
}

/** The same, with what is made of its entry. */
export function lineOf<T>(make: MakeEntry<T>, bytes: Buffer, from: number, to: number): LineOf<T> | null {
  const head = readHead(bytes, from, to);
  if (head === null) return null;
  const entry = make(bytes, head.entry, to - 1);
  return entry === null ? null : { seq: head.seq, entry };
}

/** An entry as JSON.parse gives it: an object, as a line's head says. */
export function parseEntry(bytes: Buffer, from: number, to: number): unknown {
  return readMarkEntry(bytes, from, to) ?? parseText(bytes, from, to);
}

/** The same of any entry; null where it is no JSON. */
export function parseText(bytes: Buffer, from: number, to: number): unknown {
  try {
    return JSON.parse(bytes.toString('utf8', from, to));
  } catch {
    return null;
  }
}

/** Is this line whole? Much faster than reading it. */
export function isWhole(bytes: Buffer, from: number, to: number): boolean {
  return readHead(bytes, from, to) !== null;
}

/** The number of a whole line, and where its entry begins. */
function readHead(bytes: Buffer, from: number, to: number): { seq: number; entry: number } | null {
  if (bytes[to - 1] !== BRACE) return null;
  const view = viewOf(bytes);
  let at = behind(START, view, from);
  const digits = at;
  let seq = 0;
  for (let digit = digitAt(bytes, at); digit < 10 && at - digits <= MOST_DIGITS; digit = digitAt(bytes, at)) {
    seq = seq * 10 + digit;
    at += 1;
  }
  const end = at;
  if (end === digits || end - digits > MOST_DIGITS) return null;
  at = behind(SUM, view, at);
  let sum = 0;
  for (const last = at + SUM_DIGITS; at < last; at += 1) sum = sum * 16 + digitAt(bytes, at);
  at = behind(ENTRY, view, at) - 1;
  if (!(at > 0)) return null;
  // Zeros before a number are no part of it.
  const begun = bytes[digits] === ZERO ? crc32(`${seq}:`) : sumOfNumber(bytes, digits, end);
  return crc32(bytes.subarray(at, to - 1), begun) === sum ? { seq, entry: at } : null;
}

/** The place behind this text, if it stands here; else none. */
function behind(text: FixedText, view: DataView, at: number): number {
  return standsAt(text, view, at) ? at + text.length : Number.NaN;
}

/** The hexadecimal digit at a place, written small; anything else is none. */
function digitAt(bytes: Buffer, at: number): number {
  const byte = bytes[at] ?? 0;
  if (byte >= 48 && byte <= 57) return byte - 48;
  return byte >= 97 && byte <= 102 ? byte - 87 : Number.NaN;
}

/**
 * The whole lines inside a damaged one, each with its place in it: where the end of a line was damaged, two lines run
 * together, and both can be read.
 */
export function salvage(bytes: Buffer): (ReadLine & { readonly at: number; readonly end: number })[] {
  return [...salvageOf(parseEntry, bytes)];
}

/** The same one after another, with what is made of their entries. */
export function* salvageOf<T>(
  make: MakeEntry<T>,
  bytes: Buffer,
): Generator<LineOf<T> & { readonly at: number; readonly end: number }> {
  const starts = [];
  for (let at = bytes.indexOf(START_TEXT); at >= 0; at = bytes.indexOf(START_TEXT, at + 1)) starts.push(at);
  for (const [k, at] of starts.entries()) {
    const next = starts[k + 1];
    const ends = next === undefined ? [bytes.length, bytes.length - 1] : [next - 1, next];
    for (const end of ends) {
      const read = lineOf(make, bytes, at, end);
      if (read === null) continue;
      yield { ...read, at, end };
      break;
    }
  }
}

/** The checksum over a number's digits, a colon and the entry. */
function sumOf(seq: number, entry: string): number {
  return crc32(entry, crc32(`${seq}:`));
}
