import { closeSync, fstatSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';

/** A stream for pino: lines to a file that is begun anew when it is full, the older ones kept up to a number. */
export class RotatedFile {
  readonly #path: string;
  readonly #most: number;
  readonly #keep: number;
  #file: number | null = null;
  #bytes = 0;

  constructor(path: string, most = 5 * 1024 * 1024, keep = 5) {
    this.#path = path;
    this.#most = most;
    this.#keep = keep;
  }

  /** Writes a line. The program's own log stops nothing: what cannot be written is lost. */
  write(line: string): void {
    try {
      const bytes = Buffer.from(line);
      if (this.#file === null) this.#open();
      if (this.#bytes > 0 && this.#bytes + bytes.length > this.#most) this.#rotate();
      if (this.#file === null) return;
      writeSync(this.#file, bytes);
      this.#bytes += bytes.length;
    } catch {
      this.#close();
    }
  }

  #open(): void {
    this.#file = openSync(this.#path, 'a', 0o600);
    this.#bytes = fstatSync(this.#file).size;
  }

  /** hub.log becomes hub.log.1, that hub.log.2, and so on; the last one goes. */
  #rotate(): void {
    this.#close();
    rmSync(`${this.#path}.${this.#keep}`, { force: true });
    for (let k = this.#keep - 1; k >= 1; k -= 1) moveIfThere(`${this.#path}.${k}`, `${this.#path}.${k + 1}`);
    moveIfThere(this.#path, `${this.#path}.1`);
    this.#open();
  }

  #close(): void {
    if (this.#file !== null) closeSync(this.#file);
    this.#file = null;
  }
}

function moveIfThere(from: string, to: string): void {
  try {
    renameSync(from, to);
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT')) throw error;
  }
}
