import type { Low } from 'lowdb';
import { z } from 'zod';
import { type Shop, type ShopFile, shopFile } from '#core/api/shop-api.ts';
import { isTree } from '#core/fields/read-shape.ts';
import type { Fault, Result } from '#core/fields/fault.ts';
import type { Units } from '#core/length/units.ts';
import { readProfile, writeProfile } from '#core/shop/read-profile.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { shopAtFirst } from '#core/shop/shop-start.ts';
import { type DocumentTrouble, putAside } from '../files/aside.ts';
import { openDocument } from '../files/document.ts';
import type { FilePort } from '../files/file-port.ts';
import { formatOf, migrate, NewerFormat } from '../files/migration.ts';
import { Turns } from '../files/turns.ts';

const SHOP_FORMAT = 2;
/** Since the second form there may be tools for jobs in the other units. */
const STEPS = { 1: (older: unknown) => (isTree(older) ? { ...older, format: 2 } : older) };
const shopDocument = z.object({ format: z.literal(SHOP_FORMAT), revision: z.number().int(), shop: shopFile });
export type ShopDocument = z.infer<typeof shopDocument>;

export type ShopSaved =
  | { readonly kind: 'saved'; readonly shop: Shop }
  | { readonly kind: 'stale'; readonly revision: number }
  | { readonly kind: 'faults'; readonly faults: readonly Fault[] };

/** The shop: its people, tools, screens, and how often its data are copied. */
export class ShopStore {
  readonly #document: Low<ShopDocument>;
  readonly #turns = new Turns();
  #older: boolean;
  readonly trouble: DocumentTrouble | null;

  private constructor(document: Low<ShopDocument>, older: boolean, trouble: DocumentTrouble | null) {
    this.#document = document;
    this.#older = older;
    this.trouble = trouble;
  }

  /** Reads the shop's file. One that cannot be read is kept aside and reported, and the shop is as at first. */
  static async open(port: FilePort, path: string): Promise<ShopStore> {
    const fresh: ShopDocument = { format: SHOP_FORMAT, revision: 0, shop: shopAtFirst() };
    let older = false;
    const read = (text: string) => {
      older = formatOf(JSON.parse(text)) < SHOP_FORMAT;
      return readShopDocument(text);
    };
    try {
      return new ShopStore(await openDocument(port, path, read, fresh), older, null);
    } catch (error) {
      if (error instanceof NewerFormat) throw error;
      const trouble = await putAside(port, path, error);
      return new ShopStore(await openDocument(port, path, readShopDocument, fresh), false, trouble);
    }
  }

  /** Does it lie on disk in an older form? */
  get older(): boolean {
    return this.#older;
  }

  /** Writes it in today's form. */
  async rewrite(): Promise<void> {
    await this.#document.write();
    this.#older = false;
  }

  /** As it lies on disk. */
  get document(): ShopDocument {
    return this.#document.data;
  }

  get shop(): Shop {
    const { revision, shop } = this.#document.data;
    const tools = (units: Units) => this.profileFor(units) as Shop['profile'];
    return { ...shop, revision, profile: tools(shop.units), otherProfile: tools(otherUnits(shop.units)) };
  }

  /** The tools for jobs in these units: the shop's own, or the built-in ones where it has said nothing of them. */
  profileFor(units: Units): Record<string, unknown> {
    const { shop } = this.#document.data;
    const said = shop.units === units ? shop.profile : shop.otherProfile;
    const own = said === undefined ? null : readProfile(said, units);
    return writeProfile(own?.ok === true ? own.value : builtInProfile(units));
  }

  update(revision: number, shop: ShopFile): Promise<ShopSaved> {
    return this.#turns.take(async () => {
      const before = this.#document.data;
      if (before.revision !== revision) return { kind: 'stale', revision: before.revision };
      const other = otherUnits(shop.units);
      const profile = readProfile(shop.profile, shop.units);
      const otherProfile = readProfile(shop.otherProfile ?? this.profileFor(other), other);
      if (!profile.ok || !otherProfile.ok)
        return {
          kind: 'faults',
          faults: [...faultsIn(profile, 'profile'), ...faultsIn(otherProfile, 'otherProfile')],
        };
      this.#document.data = {
        format: SHOP_FORMAT,
        revision: revision + 1,
        shop: {
          ...shop,
          profile: writeProfile(profile.value),
          otherProfile: writeProfile(otherProfile.value),
        },
      };
      try {
        await this.#document.write();
      } catch (error) {
        this.#document.data = before;
        throw error;
      }
      return { kind: 'saved', shop: this.shop };
    });
  }
}

function otherUnits(units: Units): Units {
  return units === 'in' ? 'mm' : 'in';
}

function faultsIn(read: Result<unknown>, name: string): Fault[] {
  return read.ok ? [] : read.faults.map((fault) => ({ ...fault, path: `${name}.${fault.path}` }));
}

/** A shop's text as this version's form. Throws NewerFormat, or what is wrong with it. */
export function readShopDocument(text: string): ShopDocument {
  const read: unknown = JSON.parse(text);
  const format = formatOf(read);
  if (format > SHOP_FORMAT) throw new NewerFormat('the shop', format, SHOP_FORMAT);
  return shopDocument.parse(migrate(read, format, SHOP_FORMAT, STEPS));
}
