import { X509Certificate } from 'node:crypto';
import { join } from 'node:path';
import type { Low } from 'lowdb';
import { z } from 'zod';
import { putAside } from '../../store/files/aside.ts';
import { openDocument } from '../../store/files/document.ts';
import type { FilePort } from '../../store/files/file-port.ts';
import { formatOf, migrate, NewerFormat } from '../../store/files/migration.ts';

const NAME = 'station.json';
const FORMAT = 1;
const trust = z.object({
  format: z.literal(FORMAT),
  /** The certificate of the shop's authority that somebody has compared; null before. */
  authority: z.string().nullable(),
  /** At which address the screens were shown last; a browser may have kept them. */
  shown: z.string().nullable(),
});
type Trust = z.infer<typeof trust>;

/** Which shop this machine trusts, as somebody has compared it once. A file that cannot be read is kept aside, and nobody trusted. */
export class KeptTrust {
  readonly #document: Low<Trust>;

  private constructor(document: Low<Trust>) {
    this.#document = document;
  }

  static async open(port: FilePort, data: string): Promise<KeptTrust> {
    await port.makeFolder(data);
    const path = join(data, NAME);
    const fresh: Trust = { format: FORMAT, authority: null, shown: null };
    try {
      return new KeptTrust(await openDocument(port, path, readTrust, fresh));
    } catch (error) {
      if (error instanceof NewerFormat) throw error;
      await putAside(port, path, error);
      return new KeptTrust(await openDocument(port, path, readTrust, fresh));
    }
  }

  /** The certificate of the shop's authority, as PEM. */
  get authority(): string | null {
    return this.#document.data.authority;
  }

  get fingerprint(): string | null {
    return this.authority === null ? null : new X509Certificate(this.authority).fingerprint256;
  }

  /** Were the screens shown from this address before? */
  wasShown(url: string): boolean {
    return this.#document.data.shown === url;
  }

  /** From now on this authority is trusted, and no other. */
  trust(authority: string): Promise<void> {
    return this.#keep({ format: FORMAT, authority, shown: null });
  }

  /** The screens are shown from this address. */
  async showing(url: string): Promise<void> {
    if (!this.wasShown(url)) await this.#keep({ ...this.#document.data, shown: url });
  }

  async #keep(next: Trust): Promise<void> {
    const before = this.#document.data;
    this.#document.data = next;
    try {
      await this.#document.write();
    } catch (error) {
      this.#document.data = before;
      throw error;
    }
  }
}

function readTrust(text: string): Trust {
  const read: unknown = JSON.parse(text);
  const format = formatOf(read);
  if (format > FORMAT) throw new NewerFormat('what this machine trusts', format, FORMAT);
  const found = trust.parse(migrate(read, format, FORMAT, {}));
  // One that is no certificate is a file that cannot be read.
  if (found.authority !== null) void new X509Certificate(found.authority);
  return found;
}
