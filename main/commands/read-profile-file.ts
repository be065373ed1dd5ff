import type { Units } from '#core/length/units.ts';
import { readProfile } from '#core/shop/read-profile.ts';
import { builtInProfile, type ShopProfile } from '#core/shop/shop-profile.ts';
import { endWithFaults, readJsonFile } from './read-job-file.ts';

/** The shop profile of a file, or the built-in one where no file is named. Ends with exit code 2 where it is faulty. */
export function profileFrom(path: string | undefined, units: Units): ShopProfile {
  if (path === undefined) return builtInProfile(units);
  const text = readJsonFile(path);
  if (!text.ok) endWithFaults(text.faults);
  const read = readProfile(text.value, units);
  if (!read.ok) endWithFaults(read.faults);
  return read.value;
}
