import { dirname, join } from 'node:path';
import { z } from 'zod';
import { type Trouble, trouble as troubleSchema } from '#core/api/office-api.ts';
import { documentText } from '../files/document.ts';
import { type FilePort, replaceFile, wordsOf } from '../files/file-port.ts';
import { NewerFormat } from '../files/migration.ts';
import { sealed, unsealed } from '../files/seal.ts';
import { Turns } from '../files/turns.ts';

/** What a data folder held when it was last looked at: enough to tell at the next start what is missing. */
export interface Standing {
  /** The last number that was given out, and the log's bytes up to its end. */
  readonly seq: number;
  readonly bytes: number;
  /** How many jobs there are. */
  readonly jobs: number;
  /** How many lines of the log are damaged, as far as that was found. */
  readonly damaged: number;
  /** Has the shop been saved? Is a PIN set? */
  readonly shop: boolean;
  readonly pin: boolean;
}

const STANDING_FORMAT = 1;
const EVERY_MS = 1000;
const AGAIN_MS = 5000;
const NOTHING: Standing = { seq: 0, bytes: 0, jobs: 0, damaged: 0, shop: false, pin: false };

const document = z.object({
  format: z.literal(STANDING_FORMAT),
  seq: z.int(),
  bytes: z.int(),
  jobs: z.int(),
  damaged: z.int(),
  shop: z.boolean(),
  pin: z.boolean(),
  /** What was found missing or damaged, until somebody says that it is known. */
  troubles: z.array(troubleSchema),
});

/** The record in a folder of its own, so that one that was removed is told from one that never was. */
export function standingPath(folder: string): string {
  return join(folder, 'standing', 'standing.json');
}

/**
 * The record of what a data folder holds, flushed beside it: at most a second behind while much is marked. What was lost
 * while nobody looked is told by it, and stays told until somebody says that it is known.
 */
export class StandingRecord {
  readonly #port: FilePort;
  readonly #path: string;
  readonly #turns = new Turns();
  /** As it was found; null where nothing can be compared. */
  readonly before: Standing | null;
  #now: () => Standing;
  #troubles: Trouble[];
  #written = '';
  #closed = false;
  #trouble: string | null = null;
  #timer: ReturnType<typeof setTimeout> | null = null;

  private constructor(port: FilePort, path: string, before: Standing | null, troubles: readonly Trouble[]) {
    this.#port = port;
    this.#path = path;
    this.before = before;
    this.#now = () => before ?? NOTHING;
    this.#troubles = [...troubles];
  }

  /** Reads the record of a folder. One that is gone or cannot be read is a trouble itself; a folder of before has none. */
  static async open(port: FilePort, folder: string): Promise<StandingRecord> {
    const path = standingPath(folder);
    const found = await readRecord(port, path);
    if (found === null) return new StandingRecord(port, path, null, []);
    if ('code' in found) return new StandingRecord(port, path, null, [found]);
    const { format: _format, troubles, ...before } = found;
    // Said once: at the start that found it.
    const still = troubles.filter(({ code }) => code !== 'pin-gone');
    return new StandingRecord(port, path, before, still);
  }

  get troubles(): readonly Trouble[] {
    return this.#troubles;
  }

  /** Why it could not be written; null when it could. It is tried again. */
  get trouble(): string | null {
    return this.#trouble;
  }

  /** One more trouble, unless it is told already; of damaged lines only how many there are in all. */
  tell(trouble: Trouble): void {
    const same = JSON.stringify(trouble);
    this.#troubles = this.#troubles.filter(
      (each) => JSON.stringify(each) !== same && (each.code !== trouble.code || each.code !== 'log-damaged'),
    );
    this.#troubles.push(trouble);
    this.note();
  }

  /** Somebody knows all that was told. */
  async known(): Promise<void> {
    const before = this.#troubles;
    this.#troubles = [];
    try {
      await this.write();
    } catch (error) {
      this.#troubles = before;
      throw error;
    }
  }

  /** From here on this tells how the folder stands. */
  follow(now: () => Standing): void {
    this.#now = now;
  }

  /** Other data were put in place: what was told of those before is over. */
  renewed(): void {
    this.#troubles = [];
    this.#written = '';
    this.note();
  }

  /** Something has changed: it is written within a second. */
  note(inMs = EVERY_MS): void {
    if (this.#timer !== null || this.#closed) return;
    this.#timer = setTimeout(() => {
      this.#timer = null;
      this.write().catch(() => this.note(AGAIN_MS));
    }, inMs);
    this.#timer.unref();
  }

  /** Writes it now, where it differs from what was written; `as` over how the folder stands. */
  write(as: Partial<Standing> = {}): Promise<void> {
    return this.#turns.take(async () => {
      const text = textOf({ ...this.#now(), ...as }, this.#troubles);
      if (text === this.#written) return;
      try {
        await this.#port.makeFolder(dirname(this.#path));
        await replaceFile(this.#port, this.#path, text);
      } catch (error) {
        this.#trouble = wordsOf(error);
        throw error;
      }
      this.#trouble = null;
      this.#written = text;
    });
  }

  /** Writes it for the last time. */
  async close(): Promise<void> {
    this.#closed = true;
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    await this.write();
  }
}

/** Other data take the place of those that were: nothing of them is missed from here on. What is told, and the PIN, stay. */
export async function forgetStanding(port: FilePort, folder: string): Promise<void> {
  const path = standingPath(folder);
  const found = await readRecord(port, path);
  if (found === null || 'code' in found) return;
  await replaceFile(port, path, textOf({ ...NOTHING, pin: found.pin }, []));
}

function textOf(standing: Standing, troubles: readonly Trouble[]): string {
  return sealed(documentText({ format: STANDING_FORMAT, ...standing, troubles }));
}

async function readRecord(port: FilePort, path: string): Promise<z.infer<typeof document> | Trouble | null> {
  if (port.identity(dirname(path)) === null) return null;
  let bytes: Buffer | null;
  try {
    bytes = await port.read(path);
  } catch (error) {
    return { code: 'record-unreadable', figures: { reason: wordsOf(error) } };
  }
  if (bytes === null) return { code: 'record-gone', figures: {} };
  try {
    const read: unknown = JSON.parse(unsealed(bytes.toString('utf8')));
    const format = typeof read === 'object' && read !== null && 'format' in read ? Number(read.format) : 0;
    if (format > STANDING_FORMAT) throw new NewerFormat('the record of the folder', format, STANDING_FORMAT);
    return document.parse(read);
  } catch (error) {
    if (error instanceof NewerFormat) throw error;
    return { code: 'record-unreadable', figures: { reason: wordsOf(error).slice(0, 100) } };
  }
}
