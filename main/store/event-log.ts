import type { FilePort, GrowingFile } from './file-port.ts';
import { readLine, writeLine } from './log-line.ts';

/** A line of the log that could not be read: where it stands. */
export interface DamagedLine {
  readonly line: number;
  readonly byte: number;
}

export interface ReadLog {
  readonly lastSeq: number;
  /** How many bytes hold whole lines; what comes after is a torn tail. */
  readonly bytes: number;
  readonly torn: number;
  readonly damaged: readonly DamagedLine[];
}

/** Reads a log line by line; damaged lines are passed over and reported, a torn last line counts as never written. */
export function readLog(bytes: Buffer, each: (seq: number, entry: unknown) => void): ReadLog {
  const damaged: DamagedLine[] = [];
  let lastSeq = 0;
  let start = 0;
  let line = 0;
  for (let end = bytes.indexOf(10, start); end >= 0; end = bytes.indexOf(10, start)) {
    line += 1;
    const read = readLine(bytes.toString('utf8', start, end));
    if (read === null || read.seq <= lastSeq) damaged.push({ line, byte: start });
    else {
      lastSeq = read.seq;
      each(read.seq, read.entry);
    }
    start = end + 1;
  }
  return { lastSeq, bytes: start, torn: bytes.length - start, damaged };
}

interface Waiting {
  readonly line: string;
  readonly done: () => void;
  readonly failed: (error: unknown) => void;
}

/**
 * The append-only log. `append` answers when the line is on disk; lines that arrive together share one flush. After a
 * failed write or flush the file is opened anew, read back, and cut to what was answered: it is never just tried again.
 */
export class EventLog {
  #file: GrowingFile | null;
  #bytes: number;
  #seq: number;
  #waiting: Waiting[] = [];
  #running: Promise<void> | null = null;
  readonly #port: FilePort;
  readonly path: string;

  private constructor(port: FilePort, path: string, file: GrowingFile, bytes: number, seq: number) {
    this.#port = port;
    this.path = path;
    this.#file = file;
    this.#bytes = bytes;
    this.#seq = seq;
  }

  /** Opens the log, hands on every whole line in order, and cuts off a torn tail. */
  static async open(
    port: FilePort,
    path: string,
    each: (seq: number, entry: unknown) => void,
  ): Promise<{ log: EventLog; read: ReadLog }> {
    const bytes = (await port.read(path)) ?? Buffer.alloc(0);
    const read = readLog(bytes, each);
    const file = await port.grow(path);
    if (read.torn > 0) {
      await file.truncate(read.bytes);
      await file.flush();
    }
    return { log: new EventLog(port, path, file, read.bytes, read.lastSeq), read };
  }

  /** The number of the last line that was answered or is being written. */
  get lastSeq(): number {
    return this.#seq;
  }

  /** Bytes answered for. */
  get size(): number {
    return this.#bytes;
  }

  /** Gives the entry its number and writes it down. Rejects, and forgets the number, when it is not on disk. */
  append(entry: unknown): { readonly seq: number; readonly written: Promise<void> } {
    this.#seq += 1;
    const seq = this.#seq;
    const written = new Promise<void>((done, failed) => {
      this.#waiting.push({ line: writeLine(seq, entry), done, failed });
    });
    this.#running ??= this.#run();
    return { seq, written };
  }

  async #run(): Promise<void> {
    await Promise.resolve();
    while (this.#waiting.length > 0) {
      const batch = this.#waiting;
      this.#waiting = [];
      const text = batch.map(({ line }) => line).join('');
      try {
        const file = (this.#file ??= await this.#reopen());
        await file.append(text);
        await file.flush();
        this.#bytes += Buffer.byteLength(text);
        for (const { done } of batch) done();
      } catch (error) {
        await this.#dropFile();
        const refused = [...batch, ...this.#waiting];
        this.#waiting = [];
        this.#seq -= refused.length;
        for (const { failed } of refused) failed(error);
      }
    }
    this.#running = null;
  }

  /** After a failure: what was answered must still stand there, whole; anything behind it was refused and is cut off. */
  async #reopen(): Promise<GrowingFile> {
    const bytes = (await this.#port.read(this.path)) ?? Buffer.alloc(0);
    if (bytes.length < this.#bytes)
      throw new Error(`the log is shorter than what was answered: ${bytes.length} of ${this.#bytes} bytes`);
    const file = await this.#port.grow(this.path);
    await file.truncate(this.#bytes);
    await file.flush();
    return file;
  }

  async #dropFile(): Promise<void> {
    const file = this.#file;
    this.#file = null;
    await file?.close().catch(() => undefined);
  }

  /** Waits for what is being written, then closes. */
  async close(): Promise<void> {
    while (this.#running !== null) await this.#running;
    await this.#dropFile();
  }
}
