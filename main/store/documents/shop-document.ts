import { z } from 'zod';
import { shopFile } from '#core/api/shop-api.ts';
import { isTree } from '#core/fields/read-shape.ts';
import { formatOf, migrate, NewerFormat } from '../files/migration.ts';
import { FIRST_WAYS } from './first-fields.ts';

/** The newest form of the shop's document that this version knows. */
export const SHOP_FORMAT = 3;

/** Since the second form there may be tools for jobs in the other units; since the third there are ways. */
const STEPS = {
  1: (older: unknown) => (isTree(older) ? { ...older, format: 2 } : older),
  2: (older: unknown) => (isTree(older) ? { ...older, format: 3, shop: withWays(older.shop) } : older),
};

/** A shop that had chosen the band saw for its rip goes on ripping there; any other is given what is built in. */
function withWays(shop: unknown): unknown {
  if (!isTree(shop)) return shop;
  const { profile, otherProfile, ...rest } = shop;
  return {
    ...rest,
    ...(profile === undefined ? {} : { profile: ripping(profile) }),
    ...(otherProfile === undefined ? {} : { otherProfile: ripping(otherProfile) }),
  };
}

function ripping(profile: unknown): unknown {
  return isTree(profile) && profile.stripStation === 'band-saw' ? { ...profile, ways: FIRST_WAYS } : profile;
}

/** A language that this version does not know is none: the shop is not lost over it. */
const keptShop = shopFile.extend({ language: shopFile.shape.language.catch(undefined) });
const shopDocument = z.object({ format: z.literal(SHOP_FORMAT), revision: z.number().int(), shop: keptShop });
/** The shop as it lies in its file. */
export type ShopDocument = z.infer<typeof shopDocument>;

/** A shop's text as this version's form. Throws NewerFormat, or what is wrong with it. */
export function readShopDocument(text: string): ShopDocument {
  const read: unknown = JSON.parse(text);
  const format = formatOf(read);
  if (format > SHOP_FORMAT) throw new NewerFormat('the shop', format, SHOP_FORMAT);
  return shopDocument.parse(migrate(read, format, SHOP_FORMAT, STEPS));
}
