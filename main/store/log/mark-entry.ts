import { type FixedText, fixedText, standsAt, viewOf } from './fixed-text.ts';

/** A text that stood in a line, and as which one of which list it was handed on last. */
export interface Known {
  readonly bytes: Uint8Array;
  readonly text: string;
  list: object | null;
  number: number;
}

interface Key {
  readonly text: FixedText;
  /** The value that stood behind it in the line before: often the next one's too. */
  before: Known;
}

const NOTHING: Known = { bytes: new Uint8Array(0), text: '', list: null, number: 0 };
const keyOf = (text: string): Key => ({ text: fixedText(text), before: NOTHING });

const RECEIVED = keyOf('{"kind":"mark","mark":{"received":"');
const JOB = keyOf('","job":"');
const DOOR = keyOf('","door":"');
const PART = keyOf('","part":"');
const ID = keyOf('","mark":{"id":"');
const CODE = keyOf('","code":"');
const STATION = keyOf('","station":"');
const STAGE = keyOf('","stage":"');
const MARK = keyOf('","mark":"');
const BY = keyOf('","by":"');
const AT = keyOf('","at":"');
const END = fixedText('"}}}');

const QUOTE = 34;
const BACKSLASH = 92;
const SPACE = 32;
/** An id, and an instant as `toISOString` writes it: no two are alike, so they are not looked for among the known. */
export const UUID = 36;
export const INSTANT = 24;
/** How many texts are remembered, a power of two; a text that comes to a taken slot takes it. */
const SLOTS = 1 << 13;

const known = Array.from<Known | undefined>({ length: SLOTS });

/** Where the next key is to stand: one line is read at a time. */
let at = 0;

/** A mark as it stands in a line. An instant, where it is written as `toISOString` does, and the id stand at a place; else a text that is known. */
export interface MarkSeen {
  received: number | Known;
  job: Known;
  door: Known;
  part: Known;
  id: number;
  code: Known;
  station: Known;
  stage: Known;
  mark: Known;
  by: Known | null;
  at: number | Known;
}

/** The one that was seen last: one line is read at a time. */
const seen: MarkSeen = {
  received: 0,
  job: NOTHING,
  door: NOTHING,
  part: NOTHING,
  id: 0,
  code: NOTHING,
  station: NOTHING,
  stage: NOTHING,
  mark: NOTHING,
  by: null,
  at: 0,
};

/**
 * The entry of a mark from one place to another, exactly as JSON.parse gives it; null where it is none with its fields in the order
 * in which they are written and no sign in them escaped: then JSON.parse is to read it. Nearly every line of a log is such a one,
 * and a hub that starts reads all of them: a text that stood in a line before is not made again.
 */
export function readMarkEntry(bytes: Buffer, from: number, to: number): object | null {
  if (seeMark(bytes, from, to) === null) return null;
  const id = bytes.toString('latin1', seen.id, seen.id + UUID);
  const [code, station, stage, mark] = [seen.code.text, seen.station.text, seen.stage.text, seen.mark.text];
  const made = instantOf(seen.at, bytes);
  return {
    kind: 'mark',
    mark: {
      received: instantOf(seen.received, bytes),
      job: seen.job.text,
      door: seen.door.text,
      part: seen.part.text,
      mark:
        seen.by === null
          ? { id, code, station, stage, mark, at: made }
          : { id, code, station, stage, mark, by: seen.by.text, at: made },
    },
  };
}

function instantOf(where: number | Known, bytes: Buffer): string {
  return typeof where === 'number' ? bytes.toString('latin1', where, where + INSTANT) : where.text;
}

/** The same, without its texts being made; it holds until the next one is looked for. */
export function seeMark(bytes: Buffer, from: number, to: number): MarkSeen | null {
  const view = viewOf(bytes);
  at = from;
  const received = fresh(RECEIVED, INSTANT, bytes, view) ?? next(RECEIVED, bytes, view);
  if (received === null) return null;
  const job = next(JOB, bytes, view);
  const door = job === null ? null : next(DOOR, bytes, view);
  const part = door === null ? null : next(PART, bytes, view);
  const id = part === null ? null : fresh(ID, UUID, bytes, view);
  const code = id === null ? null : next(CODE, bytes, view);
  const station = code === null ? null : next(STATION, bytes, view);
  const stage = station === null ? null : next(STAGE, bytes, view);
  const mark = stage === null ? null : next(MARK, bytes, view);
  if (job === null || door === null || part === null || id === null) return null;
  if (code === null || station === null || stage === null || mark === null) return null;
  const by = next(BY, bytes, view);
  const made = fresh(AT, INSTANT, bytes, view) ?? next(AT, bytes, view);
  if (made === null || !standsAt(END, view, at) || at + END.length !== to) return null;
  seen.received = received;
  seen.job = job;
  seen.door = door;
  seen.part = part;
  seen.id = id;
  seen.code = code;
  seen.station = station;
  seen.stage = stage;
  seen.mark = mark;
  seen.by = by;
  seen.at = made;
  return seen;
}

/** The value behind a key; null, and nothing is passed over, where another key stands or the value has an escaped sign. */
function next(key: Key, bytes: Buffer, view: DataView): Known | null {
  if (!standsAt(key.text, view, at)) return null;
  const begun = at + key.text.length;
  const { before } = key;
  const same = begun + before.bytes.length;
  if (bytes[same] === QUOTE && isThis(before.bytes, bytes, begun)) {
    at = same;
    return before;
  }
  let end = begun;
  let mixed = 0;
  for (let byte = bytes[end]; byte !== QUOTE; byte = bytes[end]) {
    if (byte === undefined || byte < SPACE || byte === BACKSLASH) return null;
    mixed = (Math.imul(mixed, 31) + byte) | 0;
    end += 1;
  }
  at = end;
  key.before = knownAs(bytes, begun, end, (mixed ^ (mixed >>> 13)) & (SLOTS - 1));
  return key.before;
}

function knownAs(bytes: Buffer, from: number, to: number, slot: number): Known {
  const there = known[slot];
  if (there?.bytes.length === to - from && isThis(there.bytes, bytes, from)) return there;
  const made: Known = {
    bytes: Uint8Array.from(bytes.subarray(from, to)),
    text: bytes.toString('utf8', from, to),
    list: null,
    number: 0,
  };
  known[slot] = made;
  return made;
}

function isThis(text: Uint8Array, bytes: Buffer, from: number): boolean {
  for (let k = 0; k < text.length; k += 1) if (text[k] !== bytes[from + k]) return false;
  return true;
}

/** Where a value of a known length in plain ASCII begins; null, and nothing is passed over, where it is not one. */
function fresh(key: Key, length: number, bytes: Buffer, view: DataView): number | null {
  const begun = at + key.text.length;
  const end = begun + length;
  if (!standsAt(key.text, view, at) || bytes[end] !== QUOTE) return null;
  for (let k = begun; k < end; k += 4) if (!isPlain(view.getInt32(k))) return null;
  at = end;
  return begun;
}

/** Is none of these four bytes a quote, a backslash, below a space, or beyond ASCII? A byte of x is 0 where the highest bit of its byte in (x − 1) & ~x stands. */
function isPlain(word: number): boolean {
  const quote = word ^ 0x22222222;
  const backslash = word ^ 0x5c5c5c5c;
  const found =
    word |
    ((quote - 0x01010101) & ~quote) |
    ((backslash - 0x01010101) & ~backslash) |
    ((word - 0x20202020) & ~word);
  return (found & 0x80808080) === 0;
}
