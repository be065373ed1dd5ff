import { parseText } from '../log-line.ts';
import { INSTANT, type Known, type MarkSeen, seeMark, UUID } from '../mark-entry.ts';
import type { Reached } from '../read-log.ts';
import {
  AT,
  type Batch,
  BY,
  CODE,
  DOOR,
  END,
  FIELDS,
  JOB,
  MARK,
  NONE,
  PART,
  RECEIVED,
  STAGE,
  STATION,
} from './batch.ts';

/** An entry as it stands in these bytes: a mark of the usual form, or JSON. */
export interface Standing {
  readonly bytes: Buffer;
  readonly from: number;
  readonly to: number;
  readonly mark: MarkSeen | null;
}

/** What is to be packed of an entry; it holds until the next one is looked at. Null where it is no JSON. */
export function standing(bytes: Buffer, from: number, to: number): Standing | null {
  const seen = seeMark(bytes, from, to);
  const usual =
    seen !== null && typeof seen.received === 'number' && typeof seen.at === 'number' ? seen : null;
  if (seen === null && parseText(bytes, from, to) === null) return null;
  return { bytes, from, to, mark: usual };
}

/** Room for so many entries at first. */
const ROOM = 2048;

/** Puts entries into batches. */
export class Packer {
  /** The list of texts that both threads keep: what of it is known by this object has its number. */
  #list: object = {};
  #listed = 0;
  readonly #mostTexts: number;
  #texts: string[] = [];
  #anew = false;
  #count = 0;
  #marks = 0;
  #seqs = new Float64Array(ROOM);
  #places = new Float64Array(ROOM);
  #fields = new Int32Array(ROOM * FIELDS);
  #ids = new Uint8Array(ROOM * UUID);
  #instants = new Uint8Array(ROOM * 2 * INSTANT);
  #instantCount = 0;
  #json = new Uint8Array(ROOM);
  #jsonEnd = 0;

  /** A list of more texts is begun anew, so that neither thread holds all that a log ever said. */
  constructor(mostTexts: number) {
    this.#mostTexts = mostTexts;
  }

  /** How many entries wait to be handed on, and the bytes of those that are JSON. */
  get count(): number {
    return this.#count;
  }

  get bytes(): number {
    return this.#jsonEnd;
  }

  add(seq: number, place: number, { bytes, from, to, mark }: Standing): void {
    if (this.#count === this.#seqs.length) this.#makeRoom();
    const k = this.#count;
    this.#count += 1;
    this.#seqs[k] = seq;
    this.#places[k] = place;
    if (mark === null) this.#addJson(k * FIELDS, bytes, from, to);
    else this.#addMark(k * FIELDS, bytes, mark);
  }

  #addJson(row: number, bytes: Buffer, from: number, to: number): void {
    const end = this.#jsonEnd + to - from;
    if (end > this.#json.length)
      this.#json = grown(this.#json, new Uint8Array(Math.max(end, 2 * this.#json.length)));
    this.#json.set(bytes.subarray(from, to), this.#jsonEnd);
    this.#jsonEnd = end;
    this.#fields[row + JOB] = NONE;
    this.#fields[row + END] = end;
  }

  #addMark(row: number, bytes: Buffer, mark: MarkSeen): void {
    const fields = this.#fields;
    fields[row + JOB] = this.#numberOf(mark.job);
    fields[row + DOOR] = this.#numberOf(mark.door);
    fields[row + PART] = this.#numberOf(mark.part);
    fields[row + CODE] = this.#numberOf(mark.code);
    fields[row + STATION] = this.#numberOf(mark.station);
    fields[row + STAGE] = this.#numberOf(mark.stage);
    fields[row + MARK] = this.#numberOf(mark.mark);
    fields[row + BY] = mark.by === null ? NONE : this.#numberOf(mark.by);
    fields[row + RECEIVED] = this.#instantAt(bytes, mark.received);
    fields[row + AT] = this.#instantAt(bytes, mark.at);
    copyInto(this.#ids, this.#marks * UUID, bytes, mark.id, UUID);
    this.#marks += 1;
  }

  #numberOf(known: Known): number {
    if (known.list === this.#list) return known.number;
    known.list = this.#list;
    known.number = this.#listed;
    this.#listed += 1;
    this.#texts.push(known.text);
    return known.number;
  }

  /** Which instant of the batch: the last one, where it is the same. A mark of the usual form has it at a place. */
  #instantAt(bytes: Buffer, place: number | Known): number {
    if (typeof place !== 'number')
      throw new Error('an instant of a mark of the usual form stands at a place');
    const count = this.#instantCount;
    if (count > 0 && isSame(this.#instants, (count - 1) * INSTANT, bytes, place)) return count - 1;
    copyInto(this.#instants, count * INSTANT, bytes, place, INSTANT);
    this.#instantCount = count + 1;
    return count;
  }

  #makeRoom(): void {
    const room = 2 * this.#seqs.length;
    this.#seqs = grown(this.#seqs, new Float64Array(room));
    this.#places = grown(this.#places, new Float64Array(room));
    this.#fields = grown(this.#fields, new Int32Array(room * FIELDS));
    this.#ids = grown(this.#ids, new Uint8Array(room * UUID));
    this.#instants = grown(this.#instants, new Uint8Array(room * 2 * INSTANT));
  }

  /** What waits, to be handed on with all its bytes; the next entries go into another batch. */
  take(reached: Reached): Batch {
    const batch: Batch = {
      count: this.#count,
      seqs: this.#seqs,
      places: this.#places,
      fields: this.#fields,
      ids: this.#ids,
      instants: this.#instants.slice(0, this.#instantCount * INSTANT),
      json: this.#json.slice(0, this.#jsonEnd),
      texts: this.#texts,
      anew: this.#anew,
      reached,
    };
    this.#anew = this.#listed > this.#mostTexts;
    if (this.#anew) {
      this.#list = {};
      this.#listed = 0;
    }
    const room = this.#seqs.length;
    this.#seqs = new Float64Array(room);
    this.#places = new Float64Array(room);
    this.#fields = new Int32Array(room * FIELDS);
    this.#ids = new Uint8Array(room * UUID);
    this.#texts = [];
    this.#count = 0;
    this.#marks = 0;
    this.#instantCount = 0;
    this.#jsonEnd = 0;
    return batch;
  }
}

/** The memory of a batch: it is handed over, and the thread that packed it has it no more. */
export function memoryOf({ seqs, places, fields, ids, instants, json }: Batch): ArrayBuffer[] {
  return [seqs.buffer, places.buffer, fields.buffer, ids.buffer, instants.buffer, json.buffer];
}

/** What stands in a column, in one with more room. */
function grown<T extends { set: (from: T) => void }>(column: T, larger: T): T {
  larger.set(column);
  return larger;
}

function copyInto(to: Uint8Array, at: number, from: Uint8Array, begun: number, length: number): void {
  for (let k = 0; k < length; k += 1) to[at + k] = from[begun + k] ?? 0;
}

/** Two instants differ sooner at their end. */
function isSame(instants: Uint8Array, at: number, bytes: Uint8Array, begun: number): boolean {
  for (let k = INSTANT - 1; k >= 0; k -= 1) if (instants[at + k] !== bytes[begun + k]) return false;
  return true;
}
