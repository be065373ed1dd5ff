import { createHash, randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import type { Low } from 'lowdb';
import { z } from 'zod';
import { isTree } from '#core/fields/read-shape.ts';
import { openDocument } from '../files/document.ts';
import { type FilePort, wordsOf } from '../files/file-port.ts';
import { NewerFormat } from '../files/migration.ts';
import { Turns } from '../files/turns.ts';

const PIN_FORMAT = 2;
/** scrypt's cost: about a tenth of a second and 32 MiB a try. */
const COST = { N: 32_768, r: 8, p: 1, maxmem: 64 * 1024 * 1024 };
const FREE_TRIES = 3;
/** So many more wrong tries are free over all browsers together that never gave the right PIN, but for paired devices. */
const FREE_FOR_ALL = 9;
const MOST_BROWSERS = 300;
const LONGEST_WAIT_MS = 15 * 60_000;

const pinDocument = z.strictObject({
  format: z.literal(PIN_FORMAT),
  pin: z.object({ salt: z.string(), hash: z.string() }).nullable(),
  /** Wrong tries since the last right one by browsers that never gave the right PIN, and when the last was. */
  wrong: z.number().int(),
  last: z.number(),
  /** The same of each browser, the one that tried last at the end; whether it gave the right PIN before. */
  browsers: z.array(
    z.object({ browser: z.string(), wrong: z.number().int(), last: z.number(), given: z.boolean() }),
  ),
});
type Browser = PinDocument['browsers'][number];
type PinDocument = z.infer<typeof pinDocument>;

export type Tried =
  { readonly kind: 'right' | 'wrong' | 'unreadable' } | { readonly kind: 'wait'; readonly seconds: number };

/** The shop's PIN: its scrypt hash, and how often it was tried in vain. Kept apart from all that is copied or given out. */
export class PinStore {
  readonly #document: Low<PinDocument>;
  readonly #now: () => number;
  readonly #turns = new Turns();
  /** Why the PIN cannot be read: then nobody can give it, and what it guards stays shut. Null when it can. */
  readonly unreadable: string | null;
  /** There was one when the folder was last looked at, and its file was removed since. */
  readonly gone: boolean;

  private constructor(
    document: Low<PinDocument>,
    now: () => number,
    { unreadable = null, gone = false }: { readonly unreadable?: string | null; readonly gone?: boolean },
  ) {
    this.#document = document;
    this.#now = now;
    this.unreadable = unreadable;
    this.gone = gone;
  }

  /**
   * Reads the PIN's file; `was` says whether one was set when it was last looked at. A file that is there and cannot be
   * read stays where it is and keeps all shut; taking it away, with the program stopped, is the way out.
   */
  static async open(
    port: FilePort,
    path: string,
    now: () => number = Date.now,
    was = false,
  ): Promise<PinStore> {
    const fresh: PinDocument = { format: PIN_FORMAT, pin: null, wrong: 0, last: 0, browsers: [] };
    try {
      const gone = was && (await port.size(path)) === null;
      return new PinStore(await openDocument(port, path, readPinDocument, fresh), now, { gone });
    } catch (error) {
      if (error instanceof NewerFormat) throw error;
      const document = await openDocument(
        { ...port, read: () => Promise.resolve(null) },
        path,
        readPinDocument,
        fresh,
      );
      return new PinStore(document, now, { unreadable: wordsOf(error).slice(0, 100) });
    }
  }

  /** Is there a PIN, one that cannot be read too? */
  get set(): boolean {
    return this.unreadable !== null || this.#document.data.pin !== null;
  }

  /** By what sessions are known to be of this very PIN; null where there is none, or none that can be read. */
  get mark(): string | null {
    const { pin } = this.#document.data;
    return this.unreadable !== null || pin === null
      ? null
      : createHash('sha256').update(`${pin.salt} ${pin.hash}`).digest('base64');
  }

  /**
   * Tries a PIN, from a browser that is told by a hash ('' where it shows none). Tries come one at a time; each counts as
   * wrong, on disk, before it is looked at, so that pulling the plug gains nothing. After three wrong ones a browser must
   * wait longer each time; so must all together that never gave the right PIN, after a dozen. One that did waits for its
   * own tries alone; so does one that cannot pass for another (`alone`), and nobody waits for what it tries.
   */
  try(pin: string, browser = '', alone = false): Promise<Tried> {
    return this.#turns.take(async () => {
      const { data } = this.#document;
      if (this.unreadable !== null) return { kind: 'unreadable' };
      if (data.pin === null) return { kind: 'right' };
      const mine = this.#browser(browser);
      const apart = alone || mine.given;
      const wait = this.#wait(mine, apart);
      if (wait > 0) return { kind: 'wait', seconds: Math.ceil(wait / 1000) };
      const last = this.#now();
      await this.#write({
        ...data,
        ...(apart ? {} : { wrong: data.wrong + 1, last }),
        browsers: withBrowser(data.browsers, { ...mine, wrong: mine.wrong + 1, last }),
      });
      const hash = await hashOf(pin, Buffer.from(data.pin.salt, 'base64'));
      if (!timingSafeEqual(hash, Buffer.from(data.pin.hash, 'base64'))) return { kind: 'wrong' };
      const { data: tried } = this.#document;
      await this.#write({
        ...tried,
        ...(apart ? {} : { wrong: 0 }),
        browsers: withBrowser(tried.browsers, { ...mine, wrong: 0, last, given: browser !== '' }),
      });
      return { kind: 'right' };
    });
  }

  /** Sets a new PIN, or none; the browser that does has given it. Whether that is allowed is asked before. */
  change(pin: string | null, browser = ''): Promise<void> {
    return this.#turns.take(async () => {
      const salt = randomBytes(16);
      const hashed =
        pin === null
          ? null
          : { salt: salt.toString('base64'), hash: (await hashOf(pin, salt)).toString('base64') };
      const browsers = browser === '' ? [] : [{ browser, wrong: 0, last: 0, given: true }];
      await this.#write({ format: PIN_FORMAT, pin: hashed, wrong: 0, last: 0, browsers });
    });
  }

  /** How long until the next try, in ms. A clock set back makes nobody wait longer than the tries made so far ask for. */
  #wait(mine: Browser, apart: boolean): number {
    const { wrong, last } = this.#document.data;
    const own = this.#left(waitAfter(mine.wrong), mine.last);
    return apart ? own : Math.max(own, this.#left(waitAfter(wrong - FREE_FOR_ALL), last));
  }

  #left(asked: number, last: number): number {
    return Math.min(asked, Math.max(0, last + asked - this.#now()));
  }

  #browser(browser: string): Browser {
    const known = this.#document.data.browsers.find((each) => each.browser === browser);
    return known ?? { browser, wrong: 0, last: 0, given: false };
  }

  async #write(data: PinDocument): Promise<void> {
    const before = this.#document.data;
    this.#document.data = data;
    try {
      await this.#document.write();
    } catch (error) {
      this.#document.data = before;
      throw error;
    }
  }
}

/** How long after so many wrong tries the next one is taken, in ms: doubling from two seconds on, up to a quarter of an hour. */
export function waitAfter(wrong: number): number {
  return wrong < FREE_TRIES ? 0 : Math.min(LONGEST_WAIT_MS, 1000 * 2 ** (wrong - FREE_TRIES + 1));
}

/** Too many are kept no more: first those go that never gave the right PIN, the one that tried longest ago first. */
function withBrowser(browsers: readonly Browser[], mine: Browser): Browser[] {
  const all = [...browsers.filter(({ browser }) => browser !== mine.browser), mine];
  if (all.length <= MOST_BROWSERS) return all;
  const over = all.find((each) => !each.given && each !== mine) ?? all[0];
  return all.filter((each) => each !== over);
}

function hashOf(pin: string, salt: Buffer): Promise<Buffer> {
  return new Promise((done, failed) =>
    scrypt(pin, salt, 32, COST, (error, hash) => (error === null ? done(hash) : failed(error))),
  );
}

function readPinDocument(text: string): PinDocument {
  const read: unknown = JSON.parse(text);
  const format = typeof read === 'object' && read !== null && 'format' in read ? Number(read.format) : 0;
  if (format > PIN_FORMAT) throw new NewerFormat('the PIN', format, PIN_FORMAT);
  // Up to the first form tries were counted for all together.
  return pinDocument.parse(format === 1 && isTree(read) ? { ...read, format: 2, browsers: [] } : read);
}
