import type { Shop } from '#core/api/shop-api.ts';
import type { Units } from '#core/length/units.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import { builtInProfile, type Tolerances } from '#core/shop/shop-profile.ts';

/** How near the shop comes to what it sets, for jobs in these units; the built-in shop's where it has not said. */
export function tolerancesOf(shop: Shop | null, units: Units): Tolerances {
  const builtIn = builtInProfile(units).tolerances;
  if (shop === null) return builtIn;
  const profile = shop.units === units ? shop.profile : shop.otherProfile;
  if (profile.tolerances === undefined) return builtIn;
  const read = readProfile({ tolerances: profile.tolerances }, units);
  return read.ok ? read.value.tolerances : builtIn;
}
