import { readProfile } from '#core/shop/read-profile.ts';
import { allStocks } from '#core/stickers/read-stocks.ts';
import type { Stocks } from '#core/stickers/stock.ts';
import type { Tools } from './tasks.ts';

/** The stocks that the shop has: the built-in ones and those of its profile. */
export function shopStocks(shop: Tools): Stocks {
  const profile = readProfile(shop.profile, shop.units);
  return allStocks(profile.ok ? profile.value.stocks : {});
}
