import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import type { Low } from 'lowdb';
import { z } from 'zod';
import { STATIONS, type StationId } from '#core/stages/stations.ts';
import { type DocumentTrouble, putAside } from '../store/files/aside.ts';
import { openDocument } from '../store/files/document.ts';
import { type FilePort, StoreBusy } from '../store/files/file-port.ts';
import { DEVICES_NAME } from '../store/files/folder-names.ts';
import { formatOf, migrate, NewerFormat } from '../store/files/migration.ts';
import { Turns } from '../store/files/turns.ts';
import { hashOfToken, newToken } from './device-token.ts';

const FORMAT = 1;
export const MOST_DEVICES = 100;
/** How often it is written down when a device was last seen. */
const KEEP_MS = 10 * 60_000;

const device = z.object({
  id: z.string(),
  name: z.string(),
  station: z.enum(STATIONS),
  /** SHA-256 of the token that its cookie holds. */
  hash: z.string(),
  /** When it was paired, and last heard of. */
  since: z.number(),
  seen: z.number(),
});
export type Device = Readonly<z.infer<typeof device>>;
const devicesDocument = z.object({ format: z.literal(FORMAT), devices: z.array(device) });
export type Devices = z.infer<typeof devicesDocument>;

/** The devices that were paired with the shop. Of what each shows to be let in, the hash alone is kept. */
export class DeviceStore {
  readonly #document: Low<Devices>;
  readonly #now: () => number;
  readonly #turns = new Turns();
  #byHash: Map<string, Device>;
  #written = 0;
  #retired = false;
  /** What happened to a list that could not be read: every device is then to be paired anew. */
  readonly trouble: DocumentTrouble | null;

  private constructor(document: Low<Devices>, now: () => number, trouble: DocumentTrouble | null) {
    this.#document = document;
    this.#now = now;
    this.trouble = trouble;
    this.#byHash = byHash(document.data.devices);
  }

  static async open(port: FilePort, data: string, now: () => number = Date.now): Promise<DeviceStore> {
    const path = join(data, DEVICES_NAME);
    const fresh: Devices = { format: FORMAT, devices: [] };
    try {
      return new DeviceStore(await openDocument(port, path, readDevices, fresh), now, null);
    } catch (error) {
      if (error instanceof NewerFormat) throw error;
      const trouble = await putAside(port, path, error);
      const empty = { ...port, read: () => Promise.resolve(null) };
      return new DeviceStore(await openDocument(empty, path, readDevices, fresh), now, trouble);
    }
  }

  /** All of them, in the order in which they were paired. */
  get all(): readonly Device[] {
    return [...this.#byHash.values()];
  }

  /** The device that shows this token; null where there is none, or it was revoked. It is noted as seen. */
  find(token: string): Device | null {
    return this.#see(this.#byHash.get(hashOfToken(token)));
  }

  /** The device of this id, which was told by something else; null where none is paired. It is noted as seen. */
  meet(id: string): Device | null {
    return this.#see(this.all.find((each) => each.id === id));
  }

  #see(found: Device | undefined): Device | null {
    if (found === undefined) return null;
    const seen = { ...found, seen: this.#now() };
    this.#byHash.set(found.hash, seen);
    // When it was last seen is lost with the plug: that is no harm.
    if (Math.abs(this.#now() - this.#written) > KEEP_MS) void this.#keep().catch(() => undefined);
    return seen;
  }

  /** Is a device of this id paired now? */
  has(id: string): boolean {
    return this.all.some((each) => each.id === id);
  }

  /** Adds a device; gives the token that tells it, which is kept nowhere. Null where there are too many already. */
  add(name: string, station: StationId): Promise<{ readonly device: Device; readonly token: string } | null> {
    return this.#turns.take(async () => {
      if (this.#byHash.size >= MOST_DEVICES) return null;
      const token = newToken();
      const now = this.#now();
      const id = randomBytes(9).toString('base64url');
      const added: Device = { id, name, station, hash: hashOfToken(token), since: now, seen: now };
      await this.#write([...this.all, added]);
      return { device: added, token };
    });
  }

  /** Takes a device away, on disk before it is answered. False where there is none of this id. */
  revoke(id: string): Promise<boolean> {
    return this.#turns.take(async () => {
      if (!this.has(id)) return false;
      // It is let in no more from now on, whether or not the disk takes it.
      for (const [hash, each] of this.#byHash) if (each.id === id) this.#byHash.delete(hash);
      await this.#write(this.all);
      return true;
    });
  }

  /** Writes down what is kept in memory alone: when each was last seen. */
  close(): Promise<void> {
    return this.#byHash.size === 0 ? Promise.resolve() : this.#keep();
  }

  /** Writes nothing more: another list is put in place of this one. */
  async retire(): Promise<void> {
    await this.close().catch(() => undefined);
    this.#retired = true;
    await this.#turns.take(() => Promise.resolve());
  }

  /** Writes down those that there are once it is its turn: one may be paired or taken away until then. */
  #keep(): Promise<void> {
    this.#written = this.#now();
    return this.#turns.take(() => this.#write(this.all));
  }

  async #write(devices: readonly Device[]): Promise<void> {
    if (this.#retired) throw new StoreBusy('the data are being replaced');
    const before = this.#document.data;
    this.#document.data = { format: FORMAT, devices: devices.map((each) => ({ ...each })) };
    try {
      await this.#document.write();
      this.#byHash = byHash(devices);
    } catch (error) {
      this.#document.data = before;
      throw error;
    }
  }
}

function byHash(devices: readonly Device[]): Map<string, Device> {
  return new Map(devices.map((each) => [each.hash, each]));
}

/** Reads the document of the devices; throws where it is none. */
export function readDevices(text: string): Devices {
  const read: unknown = JSON.parse(text);
  const format = formatOf(read);
  if (format > FORMAT) throw new NewerFormat('the list of devices', format, FORMAT);
  return devicesDocument.parse(migrate(read, format, FORMAT, {}));
}
