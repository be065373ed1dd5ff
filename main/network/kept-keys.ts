import { join } from 'node:path';
import type { Low } from 'lowdb';
import { z } from 'zod';
import { openDocument } from '../store/files/document.ts';
import type { FilePort } from '../store/files/file-port.ts';
import { NETWORK_KEYS_NAME } from '../store/files/folder-names.ts';
import { formatOf, migrate, NewerFormat } from '../store/files/migration.ts';
import type { CertifiedKey } from './certificates.ts';

const FORMAT = 1;
/** A certificate is made anew so long before its end. */
const RENEW_MS = 30 * 86_400_000;

const certifiedKey = z.object({ certificate: z.string(), key: z.string() });
const keysDocument = z.object({
  format: z.literal(FORMAT),
  authority: certifiedKey.nullable(),
  leaf: certifiedKey.nullable(),
});
export type Keys = z.infer<typeof keysDocument>;

/** What the hub shows to whoever asks over the network. */
export interface Certified {
  /** The hub's own certificate, with the key to it. */
  readonly leaf: CertifiedKey;
  /** That of the shop's authority. */
  readonly authority: string;
}

/**
 * The keys of the shop's authority and of the hub, in a file that its owner alone can read, as every file of the data folder
 * is. They are in no backup and in no export but in one that was asked for with them: a hub set up from any other makes new
 * ones, and each device trusts it anew.
 */
export class KeptKeys {
  readonly #document: Low<Keys>;

  private constructor(document: Low<Keys>) {
    this.#document = document;
  }

  /** Throws where they cannot be read: new ones would be trusted by no device, so nothing is made in their place. */
  static async open(port: FilePort, data: string): Promise<KeptKeys> {
    return new KeptKeys(
      await openDocument(port, join(data, NETWORK_KEYS_NAME), readKeys, {
        format: FORMAT,
        authority: null,
        leaf: null,
      }),
    );
  }

  /** The certificate for these addresses and names: the one that is kept, or, where that ends within 30 days or is for others, a new one. */
  async certified(names: readonly string[], shop: string, now: number): Promise<Certified> {
    // It takes a fifth of a second to load, which a hub without a network never spends.
    const { makeAuthority, makeLeaf, standsFor } = await import('./certificates.ts');
    const { data } = this.#document;
    const authority = data.authority ?? (await makeAuthority(shop, now));
    const kept = data.authority === null ? null : data.leaf;
    if (kept !== null && standsFor(kept.certificate, names, now, RENEW_MS))
      return { leaf: kept, authority: authority.certificate };
    const leaf = await makeLeaf(authority, names, now);
    this.#document.data = { format: FORMAT, authority, leaf };
    try {
      await this.#document.write();
    } catch (error) {
      this.#document.data = data;
      throw error;
    }
    return { leaf, authority: authority.certificate };
  }
}

/** Reads the document of the keys; throws where it is none. */
export function readKeys(text: string): Keys {
  const read: unknown = JSON.parse(text);
  const format = formatOf(read);
  if (format > FORMAT) throw new NewerFormat('the network’s keys', format, FORMAT);
  return keysDocument.parse(migrate(read, format, FORMAT, {}));
}
