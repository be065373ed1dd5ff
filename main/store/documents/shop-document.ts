import { z } from 'zod';
import { shopFile } from '#core/api/shop-api.ts';
import { isTree } from '#core/fields/read-shape.ts';
import { formatOf, migrate, NewerFormat } from '../files/migration.ts';

/** The newest form of the shop's document that this version knows. */
export const SHOP_FORMAT = 2;

/** Since the second form there may be tools for jobs in the other units. */
const STEPS = { 1: (older: unknown) => (isTree(older) ? { ...older, format: 2 } : older) };
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
