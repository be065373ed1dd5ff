import { once } from 'node:events';
import { PassThrough } from 'node:stream';
import type { FilePort } from '../files/file-port.ts';
import { keepTexts, type MadeOf } from './kept-plan.ts';
import type { PlanLine } from './plan-lines.ts';

/** Writes a kept plan as its lines come, so that it is never held whole. */
export class PlanWriter {
  readonly #lines = new PassThrough();
  readonly #written: Promise<void>;

  constructor(port: FilePort, path: string, madeOf: MadeOf) {
    this.#written = keepTexts(port, path, madeOf, this.#lines);
    // It is told of by `add` and `finish`.
    this.#written.catch(() => undefined);
  }

  async add(line: PlanLine): Promise<void> {
    if (!this.#lines.write(`${JSON.stringify(line)}\n`))
      await Promise.race([once(this.#lines, 'drain'), this.#written]);
  }

  /** Waits until all of it is on disk. */
  async finish(): Promise<void> {
    this.#lines.end();
    await this.#written;
  }

  /** Gives up what has come. */
  async drop(): Promise<void> {
    this.#lines.destroy(new Error('given up'));
    await this.#written.catch(() => undefined);
  }
}
