import type { PrintedProfile, Shop, ShopFile } from '#core/api/shop-api.ts';
import type { Fault, Result } from '#core/fields/fault.ts';
import type { Units } from '#core/length/units.ts';
import { readProfile, writeProfile } from '#core/shop/read-profile.ts';
import { builtInProfile } from '#core/shop/shop-profile.ts';
import { shopAtFirst } from '#core/shop/shop-start.ts';
import type { DocumentTrouble } from '../files/aside.ts';
import { NewerFormat } from '../files/migration.ts';
import { Turns } from '../files/turns.ts';
import type { FoundDocument, KeptDocument, ShopDocuments } from '../journal.ts';
import { SHOP_FORMAT, type ShopDocument } from './shop-document.ts';

export type ShopSaved =
  | { readonly kind: 'saved'; readonly shop: Shop }
  | { readonly kind: 'stale'; readonly revision: number }
  | { readonly kind: 'faults'; readonly faults: readonly Fault[] };

/** The shop: its people, tools, screens, and how often its data are copied. */
export class ShopStore {
  readonly #document: KeptDocument<ShopDocument>;
  readonly #turns = new Turns();
  #older: boolean;
  readonly trouble: DocumentTrouble | null;

  private constructor({ document, older }: FoundDocument<ShopDocument>, trouble: DocumentTrouble | null) {
    this.#document = document;
    this.#older = older;
    this.trouble = trouble;
  }

  /** Reads the shop's document. One that cannot be read is kept aside and reported, and the shop is as at first. */
  static async open(documents: ShopDocuments): Promise<ShopStore> {
    const fresh: ShopDocument = { format: SHOP_FORMAT, revision: 0, shop: shopAtFirst() };
    try {
      return new ShopStore(await documents.open(fresh), null);
    } catch (error) {
      if (error instanceof NewerFormat) throw error;
      const trouble = await documents.putAside(error);
      return new ShopStore(await documents.open(fresh), trouble);
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
    return {
      ...shop,
      revision,
      profile: this.profileFor(shop.units),
      otherProfile: this.profileFor(otherUnits(shop.units)),
    };
  }

  /** The tools for jobs in these units: the shop's own, or the built-in ones where it has said nothing of them. */
  profileFor(units: Units): PrintedProfile {
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
