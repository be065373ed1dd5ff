import {
  type FilePort,
  type GrowingFile,
  StoreBusy,
  StoreTrouble,
  wordsOf,
  writeAll,
} from '../files/file-port.ts';
import type { Entries, Settle } from '../journal.ts';
import { LogIndex } from './log-index.ts';
import { type ReadLine, writeLine } from './log-line.ts';
import {
  LOG_START,
  type LogPlace,
  type LogReader,
  type ScannedLog,
  scanLog,
  type TakeEntry,
} from './read-log.ts';

interface Waiting extends Settle {
  readonly seq: number;
  readonly bytes: Buffer;
}

/** From where a log need not be read again. */
export interface LogStart {
  readonly place: LogPlace;
  readonly index: LogIndex;
}

/**
 * The greatest number that is given out. The table of ids keeps numbers in 32 bits; long before those are used up,
 * nothing more is taken.
 */
export const MOST_SEQ = 4_000_000_000;

/**
 * The append-only log. An entry is settled when it is on disk; entries that arrive together share one flush. After a
 * failed write or flush the file is opened anew, checked, and cut to what was answered: it is never just tried again.
 */
export class EventLog implements Entries<LogPlace> {
  /** After a failure it stays open until it was opened anew, so that no other file can be taken for it. */
  #file: GrowingFile;
  #sound = true;
  /** What was answered: the last number, and the bytes and lines up to its end. */
  #answered: LogPlace;
  #lastLine: Buffer;
  #seq: number;
  #waiting: Waiting[] = [];
  #running: Promise<void> | null = null;
  #trouble: StoreTrouble | null = null;
  #retired = false;
  readonly #index: LogIndex;
  readonly #port: FilePort;
  readonly path: string;

  private constructor(
    port: FilePort,
    path: string,
    file: GrowingFile,
    answered: LogPlace,
    lastLine: Buffer,
    index: LogIndex,
  ) {
    this.#port = port;
    this.path = path;
    this.#file = file;
    this.#answered = answered;
    this.#lastLine = lastLine;
    this.#seq = answered.seq;
    this.#index = index;
    this.#trouble = port.barred ?? null;
  }

  /** Opens the log, hands on every whole line in order, as `reader` reads it, cuts off a torn tail, and writes a missing line's end. */
  static async open(
    port: FilePort,
    path: string,
    each: TakeEntry,
    start: LogStart = { place: LOG_START, index: new LogIndex() },
    reader: LogReader = scanLog,
  ): Promise<{ log: EventLog; scanned: ScannedLog }> {
    const { index } = start;
    const scanned = await reader(port, path, start.place, (read, byte) => {
      index.note(read.seq, byte);
      each(read, byte);
    });
    const file = await port.grow(path);
    return closedUnless(file, async () => {
      let { bytes } = scanned;
      if (port.barred === undefined && (scanned.torn > 0 || scanned.unended)) {
        await file.truncate(bytes);
        if (scanned.unended) {
          await writeAll(file, Buffer.from('\n'));
          bytes += 1;
        }
        await file.flush();
      }
      const lastLine = await port.slice(path, Math.max(0, bytes - CHECKED), bytes);
      return { log: new EventLog(port, path, file, { ...scanned, bytes }, lastLine, index), scanned };
    });
  }

  /** The number of the last entry that was answered or is being written. */
  get lastSeq(): number {
    return this.#seq;
  }

  /** Up to where everything is on disk. */
  get answered(): LogPlace {
    return this.#answered;
  }

  /** Why the last write failed; null when it did not. */
  get trouble(): StoreTrouble | null {
    return this.#trouble;
  }

  get index(): LogIndex {
    return this.#index;
  }

  /** The next entries get numbers after this one. */
  goOnFrom(seq: number): void {
    this.#seq = Math.max(this.#seq, seq);
  }

  /** Gives the entry its number and writes it down. */
  append(entry: unknown, settle: Settle): number {
    if (this.#seq >= MOST_SEQ) {
      queueMicrotask(() => settle.refused(new StoreTrouble(NO_NUMBERS)));
      return this.#seq;
    }
    this.#seq += 1;
    this.#waiting.push({ seq: this.#seq, bytes: Buffer.from(writeLine(this.#seq, entry)), ...settle });
    this.#running ??= this.#run();
    return this.#seq;
  }

  async #run(): Promise<void> {
    await Promise.resolve();
    while (this.#waiting.length > 0) {
      const batch = this.#waiting;
      this.#waiting = [];
      try {
        await this.#write(Buffer.concat(batch.map(({ bytes }) => bytes)));
        this.#trouble = null;
        this.#answer(batch);
      } catch (error) {
        this.#refuse(batch, error);
      }
    }
    this.#running = null;
  }

  async #write(bytes: Buffer): Promise<void> {
    if (!this.#sound) await this.#reopen();
    const file = this.#file;
    await writeAll(file, bytes);
    await file.flush();
    const displaced = file.displaced(this.#answered.bytes + bytes.length);
    if (displaced !== null) throw await displaced;
  }

  #answer(batch: readonly Waiting[]): void {
    for (const { seq, bytes, onDisk } of batch) {
      this.#index.note(seq, this.#answered.bytes);
      this.#answered = {
        seq,
        bytes: this.#answered.bytes + bytes.length,
        lines: this.#answered.lines + 1,
      };
      this.#lastLine = bytes;
      onDisk();
    }
  }

  /** All that wait are refused with what failed: they were judged as if it had been written. */
  #refuse(batch: readonly Waiting[], error: unknown): void {
    const trouble = error instanceof StoreTrouble ? error : new StoreTrouble(wordsOf(error), error);
    this.#sound = false;
    const refused = [...batch, ...this.#waiting];
    this.#waiting = [];
    this.#seq -= refused.length;
    this.#trouble = trouble;
    for (const { refused: tell } of refused) tell(trouble);
  }

  /**
   * After a failure: what was answered must still stand there, whole, in this very file; anything behind it was refused
   * and is cut off. Another file under its name, as whoever took the folder over makes one, is left alone.
   */
  async #reopen(): Promise<void> {
    const { bytes } = this.#answered;
    const size = (await this.#port.size(this.path)) ?? 0;
    if (size < bytes)
      throw new StoreTrouble(`the log is shorter than what was answered: ${size} of ${bytes} bytes`);
    const last = await this.#port.slice(this.path, bytes - this.#lastLine.length, bytes);
    if (!last.equals(this.#lastLine)) throw new StoreTrouble('the log no longer ends as it was answered');
    const before = this.#file;
    const file = await this.#port.grow(this.path);
    await closedUnless(file, async () => {
      if (file.identity !== before.identity)
        throw new StoreTrouble('another file stands in the log’s place: start the program anew');
      await file.truncate(bytes);
      await file.flush();
    });
    this.#file = file;
    this.#sound = true;
    await before.close().catch(() => undefined);
  }

  /** The entry of this number as it stands on disk; null when it cannot be read. */
  async entryAt(seq: number): Promise<unknown> {
    for await (const read of this.from(seq - 1)) return read.seq === seq ? read.entry : null;
    return null;
  }

  /**
   * Every answered entry after this number, in order, up to a place (what is answered now), read from disk a piece at a
   * time. Reaches that place or throws: a StoreTrouble when the file is no longer as it was answered, StoreBusy when
   * other data took its place meanwhile.
   */
  async *from(after: number, to: LogPlace = this.#answered): AsyncGenerator<ReadLine> {
    if (after >= to.seq) return;
    const start = this.#index.before(after + 1);
    let place: LogPlace = { seq: start.seq, bytes: start.byte, lines: 0 };
    while (place.bytes < to.bytes) {
      const piece: ReadLine[] = [];
      place = await this.#piece(place, to.bytes, (read) => piece.push(read));
      for (const read of piece) if (read.seq > after) yield read;
    }
  }

  /** What was read before the file was put away is of this log; what was read after that may be of any. */
  async #piece(place: LogPlace, end: number, each: TakeEntry): Promise<LogPlace> {
    const scanned = await scanPiece(this.#port, this.path, place, end, each).catch((error: unknown) =>
      error instanceof StoreTrouble ? error : new StoreTrouble(wordsOf(error), error),
    );
    if (this.#retired) throw new StoreBusy(RETIRED);
    if (scanned instanceof StoreTrouble) throw scanned;
    return scanned;
  }

  /** The number of the last entry up to a place that can be read; 0 when there is none. */
  async lastEntry(to: LogPlace): Promise<number> {
    let last = 0;
    for (const after of [this.#index.before(to.seq).seq, 0]) {
      for await (const { seq } of this.from(after, to)) last = seq;
      if (last > 0) break;
    }
    return last;
  }

  /** Another file is about to take this one's place: whoever still reads it is told so, and gets no more of it. */
  retire(): void {
    this.#retired = true;
  }

  /** Waits for what is being written, then closes. */
  async close(): Promise<void> {
    while (this.#running !== null) await this.#running;
    await this.#file.close();
  }
}

/** Does a work on an open file; one that fails closes it. */
async function closedUnless<T>(file: GrowingFile, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    await file.close().catch(() => undefined);
    throw error;
  }
}

/** How much of the log's end is compared after a failure, when nothing was written since it was opened. */
const CHECKED = 64 * 1024;
const PIECE = 128 * 1024;
const NO_NUMBERS = `the log’s numbers are used up (${MOST_SEQ}): begin another data folder`;
const RETIRED = 'other data were put in place while these were being read';

/** A piece of the log up to a line's end; a line longer than a piece is read whole. What was answered ends with a line. */
async function scanPiece(
  port: FilePort,
  path: string,
  place: LogPlace,
  end: number,
  each: TakeEntry,
): Promise<LogPlace> {
  for (let length = PIECE; ; length *= 4) {
    const to = Math.min(place.bytes + length, end);
    const bytes = await port.slice(path, place.bytes, to);
    const stop = bytes.lastIndexOf(10) + 1;
    const whole = bytes.length === to - place.bytes && (to < end || stop === bytes.length);
    const scanned = whole && stop > 0 ? await scanLog(port, path, place, each, place.bytes + stop) : null;
    if (scanned?.bytes === place.bytes + stop) return scanned;
    if (!whole || scanned !== null)
      throw new StoreTrouble(`the log no longer reads as it was answered, from byte ${place.bytes} on`);
  }
}
