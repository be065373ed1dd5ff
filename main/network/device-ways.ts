import { createHmac } from 'node:crypto';
import { join } from 'node:path';
import type { Low } from 'lowdb';
import { z } from 'zod';
import { type DocumentTrouble, putAside } from '../store/files/aside.ts';
import { openDocument } from '../store/files/document.ts';
import type { FilePort } from '../store/files/file-port.ts';
import { DEVICE_WAYS_NAME } from '../store/files/folder-names.ts';
import { formatOf, migrate, NewerFormat } from '../store/files/migration.ts';
import { Turns } from '../store/files/turns.ts';
import { hashOfToken, newToken } from './device-token.ts';

const FORMAT = 1;
/** Devices that are paired no more, of which it is kept where they were: so many of the last, so that their pages can be told. */
const MOST_STRANGERS = 20;
/** Addresses at which one device is known at most; the one that was added first is forgotten. */
export const MOST_WAYS = 4;

const way = z.object({
  /** At which of the hub's addresses the device got its page. */
  origin: z.string(),
  /** SHA-256 of the token that its cookie there holds; null at the address where it was paired. */
  cookie: z.string().nullable(),
  /** SHA-256 of the token by which its page there sends to the hub at another address. */
  sending: z.string().nullable(),
});
type Way = Readonly<z.infer<typeof way>>;
const entry = z.object({ device: z.string(), ways: z.array(way) });
const waysDocument = z.object({ format: z.literal(FORMAT), devices: z.array(entry) });
type Ways = z.infer<typeof waysDocument>;

/** Of no device anything is known. */
export const NO_WAYS: Ways = { format: FORMAT, devices: [] };

/**
 * By what a paired device is told besides the cookie that it was paired with: at each address where it got its page, a
 * cookie that it came to there from another, and a token by which its page sends from there. Hashes alone are kept.
 */
export class DeviceWays {
  readonly #document: Low<Ways>;
  readonly #isPaired: (device: string) => boolean;
  readonly #turns = new Turns();
  /** What happened to a list that could not be read: each device is known then at the address alone where it was paired. */
  readonly trouble: DocumentTrouble | null;

  private constructor(
    document: Low<Ways>,
    isPaired: (device: string) => boolean,
    trouble: DocumentTrouble | null,
  ) {
    this.#document = document;
    this.#isPaired = isPaired;
    this.trouble = trouble;
  }

  /** `isPaired` says which devices are paired now: no other is told by anything here. */
  static async open(
    port: FilePort,
    data: string,
    isPaired: (device: string) => boolean,
  ): Promise<DeviceWays> {
    const path = join(data, DEVICE_WAYS_NAME);
    try {
      return new DeviceWays(await openDocument(port, path, readWays, NO_WAYS), isPaired, null);
    } catch (error) {
      if (error instanceof NewerFormat) throw error;
      const trouble = await putAside(port, path, error);
      const empty = { ...port, read: () => Promise.resolve(null) };
      return new DeviceWays(await openDocument(empty, path, readWays, NO_WAYS), isPaired, trouble);
    }
  }

  /** The device whose cookie this is, at an address that it came to; null where there is none. */
  byCookie(token: string): string | null {
    const hash = hashOfToken(token);
    return this.#deviceWith(({ cookie }) => cookie === hash);
  }

  /** The device whose page at this address sends by this token; null where there is none. */
  bySending(token: string, origin: string): string | null {
    const hash = hashOfToken(token);
    return this.#deviceWith((each) => each.origin === origin && each.sending === hash);
  }

  /** Did a page at this address get a token to send by, be its device paired still or not? */
  knows(origin: string): boolean {
    return this.#document.data.devices.some(({ ways }) =>
      ways.some((each) => each.origin === origin && each.sending !== null),
    );
  }

  /** Did the page of this device at this address get one? */
  sends(device: string, origin: string): boolean {
    return this.#wayOf(device, origin)?.sending != null;
  }

  /** A new token by which the page of this device at this address sends; the one before it is over. */
  async newSending(device: string, origin: string): Promise<string> {
    const token = newToken();
    await this.#set(device, origin, { sending: hashOfToken(token) });
    return token;
  }

  /** A new token for the cookie of this device at this address. */
  async newCookie(device: string, origin: string): Promise<string> {
    const token = newToken();
    await this.#set(device, origin, { cookie: hashOfToken(token) });
    return token;
  }

  /**
   * Proves to a page that this hub knows the token that it would send, which is not told for that: by what the page asks
   * and by the address `at` which it asks, so that nobody in between can hand the answer on as its own. Null for a page that
   * has none.
   */
  proof(device: string, origin: string, nonce: string, at: string): string | null {
    const hash = this.#isPaired(device) ? this.#wayOf(device, origin)?.sending : null;
    if (hash == null) return null;
    return createHmac('sha256', Buffer.from(hash, 'base64')).update(`${nonce} ${at}`).digest('base64url');
  }

  #deviceWith(is: (way: Way) => boolean): string | null {
    const found = this.#document.data.devices.find(({ ways }) => ways.some(is))?.device;
    return found !== undefined && this.#isPaired(found) ? found : null;
  }

  #wayOf(device: string, origin: string): Way | undefined {
    return this.#document.data.devices
      .find((each) => each.device === device)
      ?.ways.find((each) => each.origin === origin);
  }

  /** On disk before it is told. */
  #set(device: string, origin: string, change: Partial<Way>): Promise<void> {
    return this.#turns.take(async () => {
      const before = this.#document.data;
      const others = before.devices.filter((each) => each.device !== device);
      const strangers = others.filter((each) => !this.#isPaired(each.device)).slice(-MOST_STRANGERS);
      const kept = others.filter((each) => this.#isPaired(each.device) || strangers.includes(each));
      const known = before.devices.find((each) => each.device === device)?.ways ?? [];
      const changed = { cookie: null, sending: null, ...this.#wayOf(device, origin), ...change, origin };
      const ways = [...known.filter((each) => each.origin !== origin), changed].slice(-MOST_WAYS);
      this.#document.data = { format: FORMAT, devices: [...kept, { device, ways }] };
      try {
        await this.#document.write();
      } catch (error) {
        this.#document.data = before;
        throw error;
      }
    });
  }
}

/** Reads the document; throws where it is none, or of a newer version. */
export function readWays(text: string): Ways {
  const read: unknown = JSON.parse(text);
  const format = formatOf(read);
  if (format > FORMAT) throw new NewerFormat('the ways of devices', format, FORMAT);
  return waysDocument.parse(migrate(read, format, FORMAT, {}));
}
