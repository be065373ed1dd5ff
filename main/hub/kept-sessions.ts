import { join } from 'node:path';
import { z } from 'zod';
import { documentText } from '../store/files/document.ts';
import { type FilePort, replaceFile } from '../store/files/file-port.ts';
import { sealed, unsealed } from '../store/files/seal.ts';
import { Turns } from '../store/files/turns.ts';

const FORMAT = 1;
const kept = z.object({
  format: z.literal(FORMAT),
  /** Of which PIN they are: with another one, or none, they are over. */
  pin: z.string(),
  sessions: z.array(z.object({ hash: z.string(), used: z.number() })),
});

/** Where sessions outlive a restart: hashes of their tokens, beside the data and in no backup. */
export class KeptSessions {
  readonly #port: FilePort;
  readonly #path: string;
  readonly #turns = new Turns();

  constructor(port: FilePort, data: string) {
    this.#port = port;
    this.#path = join(data, 'sessions.json');
  }

  /** Those that were begun with this PIN, the least used first; none where they cannot be read. */
  async read(pin: string | null): Promise<ReadonlyMap<string, number>> {
    try {
      const bytes = await this.#port.read(this.#path);
      if (bytes === null || pin === null) return new Map();
      const read = kept.parse(JSON.parse(unsealed(bytes.toString('utf8'))));
      return new Map(read.pin === pin ? read.sessions.map(({ hash, used }) => [hash, used]) : []);
    } catch {
      return new Map();
    }
  }

  write(pin: string | null, sessions: ReadonlyMap<string, number>): Promise<void> {
    const all = [...sessions].map(([hash, used]) => ({ hash, used }));
    return this.#turns.take(() =>
      pin === null || all.length === 0
        ? this.#port.remove(this.#path)
        : replaceFile(this.#port, this.#path, sealed(documentText({ format: FORMAT, pin, sessions: all }))),
    );
  }
}
